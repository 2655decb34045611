package live

import "time"

// source is where a device gets its samples from, and what it tells how far it has
// got with them.
type source interface {
	fill(out []float32) // makes the next len(out) samples

	// took says how many of the samples made so far the device had not yet taken at
	// a moment; below zero if it had to go without.
	took(at time.Time, untaken float64)

	// stands says that the device has stopped for the time being, and still holds
	// what it was given. It must not be called while the device is locked.
	stands()
}

// took implements source. It is called from the device's goroutine.
func (l *Sound) took(at time.Time, untaken float64) {
	l.pace.saw(at.Sub(l.epoch), float64(l.sched.Pos())-untaken)
}

// stands implements source. The bell takes over, and the device holds nothing
// that would be heard at the wrong moment once it goes on.
func (l *Sound) stands() {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.state != playing {
		return
	}
	l.sched.Rewind(l.out.halt())
	l.withdraw(l.real())
	l.lose(DeviceLost)
	l.feeder.moved = l.pace.moved() // what it took before it stood does not bring it back
	l.out.goOn()
	l.nudge()
}

// fill implements source. It is called from the device's goroutine.
func (l *Sound) fill(out []float32) {
	for len(out) > 0 {
		if n := l.sched.Skip(len(out)); n > 0 {
			clear(out[:n])
			out = out[n:]
			continue
		}
		var block [512][2]float64
		n, _ := l.sched.Stream(block[:min(len(block), len(out))])
		for i, v := range block[:n] {
			out[i] = float32(min(max(v[0], -1), 1))
		}
		out = out[n:]
	}
}

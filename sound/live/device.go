package live

import (
	"slices"
	"time"

	"coldfloor/internal/engine"
)

// watch notices that a device has come, gone, or come back. One that takes
// samples is not there for that: it may play them to nobody, and knows.
func (l *Sound) watch(now time.Duration) {
	f := &l.feeder
	moved := l.pace.moved()
	if moved != f.moved {
		f.moved, f.stalled = moved, 0
		if (l.state == opening || l.state == absent) && l.out.err() == nil {
			l.state, l.lack, f.anchored = playing, NoLack, false
			l.pace.begin(now, l.out.steady())
			l.revise(func() { l.withdraw(now) })
		}
	} else if l.state == playing {
		f.stalled += min(now-f.looked, lookEvery)
	}
	switch l.state {
	case opening:
		if now > f.deadline {
			l.lose(NoDevice)
		}
	case playing:
		if f.stalled > stallWait || l.out.err() != nil {
			l.lose(DeviceLost)
		}
	}
}

// lose gives up on the device, at least until it moves again.
func (l *Sound) lose(why Lack) {
	l.state, l.lack = absent, why
	l.takeBack()
}

// maySleep suspends a device that has nothing to play for long: while a session
// is chosen, after its end, and when nobody has touched a key or a rest has
// lasted for ages. A device that was suspended has lost its clock, and takes a
// third of a second to show it: what a key calls for meanwhile was up to 80 ms
// off, recorded from PulseAudio's null sink. So while a key may call for a cue,
// silence is played, and every cue stands to the sample.
func (l *Sound) maySleep(now time.Duration, d *decision) {
	next := l.untilNext(now)
	d.wait = min(lookEvery, max(ms, next-placeAhead))
	if slices.ContainsFunc(l.queue, func(q queued) bool { return q.placed }) {
		l.feeder.busy = now
	}
	if next < sleepOver || now-l.feeder.busy < sleepAfter || l.onAlert(now) {
		return
	}
	l.state = asleep
	d.do = func() { l.out.suspend() }
	d.wait = next - wakeAhead
}

// onAlert reports whether a key may call for a cue at any moment.
func (l *Sound) onAlert(now time.Duration) bool {
	return l.run.plan != nil && l.run.phase != engine.Over && now-l.run.told < alert
}

// mayWake resumes the device when a cue comes near.
func (l *Sound) mayWake(now time.Duration, d *decision) {
	next := l.untilNext(now)
	if next > wakeAhead && !l.onAlert(now) {
		d.wait = next - wakeAhead
		return
	}
	l.state = playing
	f := &l.feeder
	f.anchored, f.stalled, f.moved = false, 0, l.pace.moved()
	l.pace.begin(now, l.out.steady())
	d.do = func() { l.out.resume() }
	l.sched.Rewind(l.out.halt())
	l.place(now)
	l.out.goOn()
	d.wait = lookEvery / 4
}

// mayReopen looks for a device that was not there, or went away. Where none is
// wanted there is nothing to look for.
func (l *Sound) mayReopen(now time.Duration, d *decision) {
	if !l.wanted || l.closed {
		return
	}
	there := l.opened && l.out.err() == nil // and takes nothing for the moment
	if l.state != absent || l.inHand || there {
		d.wait = min(lookEvery, d.wait)
		return
	}
	if left := l.feeder.tried + reopenEvery - now; left > 0 {
		d.wait = min(left, d.wait)
		return
	}
	l.feeder.tried, l.inHand = now, true
	d.do = func() { go l.reopen() }
}

// reopen opens a device that is there again; watch tells when it plays.
func (l *Sound) reopen() {
	err := l.out.open(l)
	l.mu.Lock()
	defer l.mu.Unlock()
	l.inHand = false
	switch {
	case err != nil:
	case l.closed:
		l.out.close()
	default:
		l.opened = true
	}
	l.nudge()
}

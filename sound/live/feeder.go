package live

import (
	"math"
	"slices"
	"time"

	"coldfloor/sound"
)

// How the feeder keeps time.
const (
	showFirst   = 100 * time.Millisecond  // what a screen is given: to load the system's sound holds up its first frame
	openWait    = 3 * time.Second         // for a device to take its first samples; measured: up to 2 s
	stallWait   = 1200 * time.Millisecond // without a sample taken, after which a device is gone
	lookEvery   = 250 * time.Millisecond
	placeAhead  = 5 * time.Second        // before a cue is due: what a sound server holds, and well over any hold-up of a busy machine
	tooLate     = 300 * time.Millisecond // a cue that could not be given by then would mislead
	closeWait   = 2 * time.Second        // for what sounds to end
	sleepAfter  = time.Second            // with nothing to come; what sounds has faded by then
	wakeAhead   = 6 * time.Second        // before a cue is due: placeAhead, and time to find the pace
	sleepOver   = 20 * time.Second       // a silence is slept through from that length on, unless a run may call for a cue
	reopenEvery = 2 * time.Second        // while there is no device
	alert       = 10 * time.Minute       // after a run was last told of, in which it may call for a cue
	latency     = driverBuffer + 2*playerBuffer

	ms = time.Millisecond
)

// In samples: how far cues stay clear of what the device is just taking, for the
// time it takes to hand one over and for a pace that is not yet found exactly; how
// far off the pace must be for samples to have been lost; and by how much a second
// cues follow it otherwise.
var (
	margin = samplesIn(30 * time.Millisecond)
	jump   = samplesIn(2500 * time.Microsecond)
	slew   = samplesIn(200 * time.Microsecond)
)

// feeder is what the feeding goroutine keeps from look to look.
type feeder struct {
	deadline time.Duration // for the device to open
	anchored bool
	anchor   float64       // sample position, unrounded, that is for host time 0
	kept     time.Duration // when the anchor was last held against the device's pace
	looked   time.Duration
	moved    time.Duration // when the device was last seen to take samples
	stalled  time.Duration // looked at without it taking any
	busy     time.Duration // when there was last something to come
	tried    time.Duration // when a device was last looked for
	closing  time.Duration // when Close was first seen; 0: not yet
}

// position returns the sample position for host time t.
func (f *feeder) position(t time.Duration) int {
	return int(math.Round(samplesIn(t) + f.anchor))
}

// open opens the device, in its own goroutine; standard error is quiet.
func (l *Sound) open() {
	if !l.opts.Screen {
		defer loudly()
	}
	if l.isClosed() {
		return
	}
	err := l.out.open(l)
	for _, c := range sound.Cues() {
		c.Samples() // made ahead, that the device never waits for them
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	l.inHand = false
	switch {
	case err != nil:
		l.lose(NoDevice)
	case l.closed:
		l.out.close()
	default:
		l.opened = true
	}
	l.nudge()
}

// isClosed reports whether Close was called.
func (l *Sound) isClosed() bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.closed
}

// feed is the feeding goroutine.
func (l *Sound) feed() {
	defer close(l.done)
	timer := time.NewTimer(0)
	defer timer.Stop()
	for {
		select {
		case <-timer.C:
		case <-l.wake:
		}
		d := l.look()
		if d.over {
			return
		}
		d.do()
		for range d.rings {
			l.opts.Bell()
		}
		timer.Reset(d.wait)
	}
}

// decision is what a look comes to.
type decision struct {
	wait  time.Duration // until the next look, at most
	rings int           // of the bell
	do    func()        // to the device, which may hold the caller up
	over  bool          // Sound is closed and all is heard
}

// look brings everything up to the present.
func (l *Sound) look() decision {
	l.mu.Lock()
	defer l.mu.Unlock()
	now := l.real()
	l.watch(now)
	d := decision{do: func() {}}
	switch l.state {
	case playing:
		l.keepPace()
		l.placeDue(now)
		l.forget(now)
		l.maySleep(now, &d)
	case asleep:
		l.mayWake(now, &d)
	default:
		d.rings = l.ring(now)
		l.forget(now)
		d.wait = l.untilNext(now)
		l.mayReopen(now, &d)
	}
	l.feeder.looked = now
	d.over = l.isOver(now)
	return d
}

// takeBack takes what has not begun back from the scheduler into the queue.
func (l *Sound) takeBack() {
	pos := l.sched.Pos()
	l.sched.WithdrawAfter(pos)
	for i := range l.queue {
		if q := &l.queue[i]; q.placed && l.feeder.position(q.at) >= pos {
			q.placed = false
		}
	}
}

// keepPace keeps cues where the plan has them. The anchor follows what is known
// of the device's pace so slowly that no interval is heard to change: a device's
// clock and the host's run apart by some ten parts in a million. Where samples were
// lost on the way it follows at once.
func (l *Sound) keepPace() {
	line, known := l.pace.line()
	if !known {
		return
	}
	f := &l.feeder
	now := l.real()
	switch off := line + margin - f.anchor; {
	case !f.anchored: // what was handed over without it goes by it from now on
		l.revise(func() { l.takeBack(); f.anchored, f.anchor = true, line+margin })
	case math.Abs(off) > jump:
		l.revise(func() { l.takeBack(); f.anchor += off })
	default:
		most := slew * min(now-f.kept, time.Second).Seconds()
		f.anchor += min(max(off, -most), most)
	}
	f.kept = now
}

// withdraw takes all that was handed over out of the scheduler; what is for a time
// after now goes back into the queue.
func (l *Sound) withdraw(now time.Duration) {
	l.sched.WithdrawAfter(0)
	l.sched.Cut()
	for i := range l.queue {
		q := &l.queue[i]
		q.placed = q.placed && q.at <= now
	}
}

// placeDue is place; without a pace a cue that is due this moment goes before what
// the device holds already.
func (l *Sound) placeDue(now time.Duration) {
	if !l.feeder.anchored && l.untilNext(now) == 0 {
		l.revise(func() {})
	}
	l.place(now)
}

// place hands to the scheduler what is due soon. Before the pace is found, only
// what is due this moment is placed, as if the device began to take samples now.
func (l *Sound) place(now time.Duration) {
	ahead := placeAhead
	if f := &l.feeder; !f.anchored {
		ahead = 0
		f.anchor = l.pace.rough(now, float64(l.sched.Pos())) + margin
	}
	for i := range l.queue {
		q := &l.queue[i]
		if q.at > now+ahead {
			return
		}
		if q.placed || now-q.at > tooLate {
			q.placed = true
			continue
		}
		l.sched.Place(l.feeder.position(q.at), q.clip)
		q.placed = true
	}
}

// rings reports whether the bell stands in for a clip: for what calls the
// player, not for the clicks and words that go along.
func rings(c *sound.Clip) bool { return c.Kind == sound.Signal || c.Kind == sound.Call }

// ring returns how often the bell is to ring now in place of cues.
func (l *Sound) ring(now time.Duration) (times int) {
	for i := range l.queue {
		q := &l.queue[i]
		if q.at > now {
			break
		}
		if !q.placed && now-q.at <= tooLate && !l.muted && l.opts.Bell != nil && l.state != unopened && rings(q.clip) {
			times++
		}
		q.placed = true
	}
	return times
}

// forget drops from the queue what has been heard.
func (l *Sound) forget(now time.Duration) {
	l.queue = slices.DeleteFunc(l.queue, func(q queued) bool {
		return q.placed && q.at+q.clip.Duration()+latency < now
	})
}

// untilNext returns how long it is until the next clip that is not placed.
func (l *Sound) untilNext(now time.Duration) time.Duration {
	for _, q := range l.queue {
		if !q.placed {
			return max(0, q.at-now)
		}
	}
	return math.MaxInt64
}

// isOver reports whether Sound is closed and all is heard.
func (l *Sound) isOver(now time.Duration) bool {
	f := &l.feeder
	if !l.closed {
		return false
	}
	if f.closing == 0 {
		f.closing = now
	}
	return len(l.queue) == 0 || l.state != playing || now-f.closing > closeWait
}

package live

import (
	"slices"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/sound"
)

// asPlaced reports whether events are what the timeline drawn up before them
// foresaw, so that nothing is to be placed again.
func asPlaced(events []engine.Event, before engine.Phase) bool {
	for _, ev := range events {
		switch ev.Kind {
		case engine.Started, engine.Paused, engine.CountIn, engine.Extended, engine.Swapped, engine.Deserted:
			return false
		case engine.Resumed:
			if before != engine.CountedIn {
				return false
			}
		case engine.StepBegan, engine.StepEnded, engine.Finished:
			if ev.Cause != engine.ByClock {
				return false
			}
		}
	}
	return true
}

// endedByKey reports whether a key ended the session's last step, so that it
// is over but not as foreseen.
func endedByKey(events []engine.Event) bool {
	last := events[len(events)-1]
	return last.Kind == engine.Finished && (last.Cause == engine.ByFinish || last.Cause == engine.BySkip)
}

// goesOn reports whether the step in hand goes on, so that what sounds is not
// out of place.
func goesOn(events []engine.Event) bool {
	for _, ev := range events {
		if ev.Kind != engine.Extended && ev.Kind != engine.Swapped {
			return false
		}
	}
	return true
}

// viewedAt returns the time, on the events' clock, of the view that came with
// them; last is the last of them.
func viewedAt(last engine.Event, v engine.View) time.Duration {
	switch {
	case v.Phase == engine.CountedIn && last.Kind == engine.CountIn:
		return last.Now + last.Length - v.CountIn
	case v.Phase == engine.Running || v.Phase == engine.Overtime:
		return last.Now + v.Clock - last.Clock
	}
	return last.Now
}

// enqueueTimeline queues what is to be heard from host time now on, as foreseen
// when the run was last told of.
func (l *Sound) enqueueTimeline(now time.Duration) {
	for c := range sound.Timeline(l.run.plan, l.run.view, l.run.opts) {
		if at := l.run.viewed + l.scaled(c.At); at >= now {
			l.queue = append(l.queue, queued{at: at, clip: c.Clip})
		}
	}
}

// scaled returns how long d of the run's clock takes.
func (l *Sound) scaled(d time.Duration) time.Duration {
	if l.run.speed == 1 {
		return d
	}
	return time.Duration(float64(d) / l.run.speed)
}

// enqueue queues clips at times from host time now, keeping the order.
func (l *Sound) enqueue(now time.Duration, clips ...sound.Placed) {
	for _, c := range clips {
		q := queued{at: now + c.At, clip: c.Clip}
		i, _ := slices.BinarySearchFunc(l.queue, q.at+1, func(q queued, at time.Duration) int { return int(q.at - at) })
		l.queue = slices.Insert(l.queue, i, q)
	}
}

// anew takes back everything to come, and what sounds or is about to, and lets
// draw queue what comes instead. That stands to the present moment again.
func (l *Sound) anew(draw func()) {
	l.refill(func() {
		l.queue = nil
		l.sched.WithdrawAfter(0)
		l.sched.Cut()
		l.feeder.anchored = false
		draw()
		if line, known := l.pace.line(); known && l.state == playing {
			l.feeder.anchored, l.feeder.anchor, l.feeder.kept = true, line+margin, l.real()
		}
	})
	l.nudge()
}

// refill takes back what the device has not taken yet, lets change say what is to
// be heard in its place, and hands it over again.
func (l *Sound) refill(change func()) {
	plays := l.state == playing
	if plays {
		l.sched.Rewind(l.out.halt())
	}
	change()
	if plays {
		l.place(l.real())
		l.out.goOn()
	}
}

// revise is refill where taking back costs no time of the device's; elsewhere
// change is heard once what the device holds has been.
func (l *Sound) revise(change func()) {
	if l.out.steady() {
		l.refill(change)
	} else {
		change()
	}
}

// redraw draws up again what is for a time after now.
func (l *Sound) redraw(now time.Duration) {
	l.refill(func() {
		l.drop(now)
		l.enqueueTimeline(now + 1)
	})
	l.nudge()
}

// drop takes back what is for a time after now.
func (l *Sound) drop(now time.Duration) {
	l.queue = slices.DeleteFunc(l.queue, func(q queued) bool { return q.at > now })
	l.sched.WithdrawAfter(l.feeder.position(now) + 1)
}

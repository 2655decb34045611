package engine

import (
	"coldfloor/internal/plan"
)

// act does a at the latest host time.
func (e *Engine) act(a Action) {
	switch {
	case e.phase == Over:
	case e.phase == Ready:
		e.actReady(a)
	default:
		e.actUnderWay(a)
	}
}

// actReady is act before the start.
func (e *Engine) actReady(a Action) {
	switch a {
	case Start:
		e.start()
	case Swap:
		e.swap()
	}
}

// actUnderWay is act between start and end.
func (e *Engine) actUnderWay(a Action) {
	switch a {
	case Finish:
		if e.plan.Steps[e.step].Kind == plan.Work && e.ticking() {
			e.leave(ByFinish, e.step+1)
		}
	case Pause, Gap:
		if e.phase != Halted {
			e.enterHalted(pauseCause(a))
		}
	case Resume:
		if e.phase == Halted {
			e.enterGoingOn(e.opts.CountIn)
		}
	case More:
		if e.phase != Overtime {
			e.extra += MoreTime
			e.emit(Event{Kind: Extended, Length: MoreTime})
		}
	case Back:
		e.leave(ByBack, max(0, e.step-1))
	case Repeat:
		e.leave(ByRepeat, e.repeatFrom())
	case Skip:
		e.leave(BySkip, e.step+1)
	case Swap:
		e.swap()
	case Desert:
		e.desert()
	case Stop:
		e.leave(ByStop, len(e.plan.Steps))
	}
}

// desert has nothing wait for a key any more.
func (e *Engine) desert() {
	if e.opts.AllPaced {
		return
	}
	e.opts.AllPaced = true
	e.emit(Event{Kind: Deserted})
	switch e.phase {
	case Overtime:
		e.leave(ByClock, e.step+1)
	case Halted:
		e.enterGoingOn(e.opts.CountIn)
	}
}

// pauseCause returns what pauses the run when a does.
func pauseCause(a Action) Cause {
	if a == Gap {
		return ByGap
	}
	return ByKey
}

// start begins the run.
func (e *Engine) start() {
	e.since = e.now
	e.emit(Event{Kind: Started})
	e.enterStep(e.step, ByClock, e.opts.Into)
	e.enterRunning()
	if e.opts.From > 0 && e.opts.LeadIn > 0 {
		e.enterCountIn(e.opts.LeadIn)
	}
}

// leave ends the present step and begins the step at index to. A step entered
// by a key while the clock stands sets the clock going again. Work that is
// skipped or gone back to is counted in, after a skip for no longer than what
// was skipped had to go.
func (e *Engine) leave(why Cause, to int) {
	most := e.opts.CountIn
	if why == BySkip && e.plan.Steps[e.step].Kind != plan.Work {
		most = e.length() - (e.read() - e.began)
	}
	if !e.ticking() {
		e.halted += e.now - e.since
		e.since = e.now
	}
	e.endStep(why, to)
	e.enterStep(to, why, 0)
	switch {
	case e.phase == Over:
	case why == ByBack || why == ByRepeat || why == BySkip:
		e.enterGoingOn(most)
	default:
		e.enterRunning()
	}
}

// repeatFrom returns the first step of the set in hand; between sets, of the
// set just done; before any, the present step.
func (e *Engine) repeatFrom() int {
	for i := e.step; i >= 0; i-- {
		if s := e.plan.Steps[i]; s.Set >= 0 {
			return e.plan.Sets[s.Set].First
		}
	}
	return e.step
}

// swap turns the easier variant of the exercise at hand on or off.
func (e *Engine) swap() {
	x := e.concerns()
	if x == (Exercise{}) || e.plan.Session.Blocks[x.Block-1].Exercises[x.Exercise-1].Easier.Name == "" {
		return
	}
	e.easier[x] = !e.easier[x]
	e.emit(Event{Kind: Swapped, Easier: e.easier[x]})
}

// concerns returns the exercise that the present step is about: its own, or
// the one that comes next.
func (e *Engine) concerns() Exercise {
	i := e.plan.Meant(e.step)
	if i < 0 {
		return Exercise{}
	}
	s := e.plan.Steps[i]
	return Exercise{s.Block, s.Exercise}
}

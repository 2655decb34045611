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
			e.enterHalted(map[Action]Cause{Pause: ByKey, Gap: ByGap}[a])
		}
	case Resume:
		if e.phase == Halted {
			e.runOn()
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
	case Stop:
		e.leave(ByStop, len(e.plan.Steps))
	}
}

// start begins the run.
func (e *Engine) start() {
	e.since = e.now
	e.emit(Event{Kind: Started})
	e.enterStep(e.step, ByClock)
	e.enterRunning()
	if e.opts.From > 0 && e.opts.LeadIn > 0 {
		e.enterCountIn(e.opts.LeadIn)
	}
}

// leave ends the present step and begins the step at index to. A step entered
// by a key while the clock stands sets the clock going again; work entered
// backwards is counted in, for the player has to get into position.
func (e *Engine) leave(why Cause, to int) {
	if !e.ticking() {
		e.halted += e.now - e.since
		e.since = e.now
	}
	e.endStep(why)
	e.enterStep(to, why)
	if e.phase == Over {
		return
	}
	switch {
	case why == ByBack || why == ByRepeat:
		e.runOn()
	case !e.ticking():
		e.enterRunning()
	default:
		e.stand()
		e.phase = Running
	}
}

// runOn sets the clock going, through a count-in where the step is work.
func (e *Engine) runOn() {
	if e.plan.Steps[e.step].Kind == plan.Work && e.opts.CountIn > 0 {
		e.enterCountIn(e.opts.CountIn)
		return
	}
	if e.ticking() {
		e.stand()
		e.phase = Running
		return
	}
	e.enterRunning()
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
	i := e.step
	if e.plan.Steps[i].Exercise == 0 {
		if i = e.plan.NextWork(i); i < 0 {
			return Exercise{}
		}
	}
	s := e.plan.Steps[i]
	return Exercise{s.Block, s.Exercise}
}

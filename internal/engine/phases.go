package engine

import (
	"time"

	"coldfloor/internal/plan"
)

// The functions here are the only places where a step or a phase is entered.

// enterStep begins a step; one past the plan's last ends the session.
func (e *Engine) enterStep(i int, why Cause, into time.Duration) {
	if i >= len(e.plan.Steps) {
		e.enterOver(why)
		return
	}
	e.step = i
	e.began, e.extra, e.halted, e.since = e.read()-into, 0, 0, e.now
	e.emit(Event{Kind: StepBegan, Length: e.planned(i), Taken: into, Cause: why, Easier: e.easier[e.concerns()]})
}

// enterRunning lets the session's clock run on from where it stands, at once.
func (e *Engine) enterRunning() {
	if !e.ticking() && e.phase != Ready {
		e.halted += e.now - e.since
		e.emit(Event{Kind: Resumed})
	}
	e.stand()
	e.phase = Running
	if e.waits() && e.clock-e.began >= e.length() {
		e.enterOvertime()
	}
}

// enterGoingOn lets the clock run on, through a count-in of at most that length
// if the step is work: the player has to get into position.
func (e *Engine) enterGoingOn(most time.Duration) {
	if in := min(e.opts.CountIn, most); in > 0 && e.plan.Steps[e.step].Kind == plan.Work {
		e.enterCountIn(in)
		return
	}
	e.enterRunning()
}

// enterOvertime lets a step wait for its key.
func (e *Engine) enterOvertime() {
	e.emit(Event{Kind: Waiting})
	e.phase = Overtime
}

// enterHalted stops the session's clock until a key resumes it.
func (e *Engine) enterHalted(why Cause) {
	e.stand()
	e.phase, e.cause = Halted, why
	e.emit(Event{Kind: Paused, Cause: why})
}

// enterCountIn stops the session's clock for a known time.
func (e *Engine) enterCountIn(length time.Duration) {
	e.stand()
	e.phase, e.until = CountedIn, e.now+length
	e.emit(Event{Kind: CountIn, Length: length})
}

// enterOver ends the session.
func (e *Engine) enterOver(why Cause) {
	e.stand()
	e.phase = Over
	e.emit(Event{Kind: Finished, Cause: why})
}

// stand stops the session's clock, and remembers since when it stands.
func (e *Engine) stand() {
	if e.ticking() {
		e.clock, e.since = e.read(), e.now
	}
	e.anchor = e.now
}

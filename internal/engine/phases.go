package engine

import (
	"time"
)

// The functions here are the only places where a phase is entered.

// enterStep begins a step; one past the plan's last ends the session.
func (e *Engine) enterStep(i int, why Cause) {
	if i >= len(e.plan.Steps) {
		e.enterOver(why)
		return
	}
	e.step = i
	e.began, e.extra, e.halted, e.since = e.read(), 0, 0, e.now
	e.emit(Event{Kind: StepBegan, Length: e.planned(i), Cause: why, Easier: e.easier[e.concerns()]})
}

// enterRunning lets the session's clock run on from where it stands.
func (e *Engine) enterRunning() {
	if e.phase != Ready {
		e.halted += e.now - e.since
		e.emit(Event{Kind: Resumed})
	}
	e.anchor = e.now
	e.phase = Running
	if e.waits() && e.clock-e.began >= e.length() {
		e.phase = Overtime
	}
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

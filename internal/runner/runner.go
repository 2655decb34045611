// Package runner hosts one run of a session: it reads the clocks, drives the
// engine, and hands what happened to those who listen.
package runner

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// Listener is told what happened, in order, and how things stand after it. It
// must not block, nor call back into the Runner.
type Listener interface {
	Heard(events []engine.Event, after engine.View)
}

// Clock is where a Runner gets its time.
type Clock interface {
	Mono() time.Duration // monotonic, since any moment
	Wall() time.Time
}

// Runner is one run under way. It is not safe for concurrent use.
type Runner struct {
	engine    *engine.Engine
	clock     Clock
	watch     watch
	listeners []Listener
}

// New returns a Runner that has not started.
func New(p *plan.Plan, o engine.Options, c Clock, ls ...Listener) *Runner {
	limit := time.Duration(float64(maxGap) * SpeedOf(c))
	return &Runner{engine: engine.New(p, o), clock: c, watch: watch{limit: limit}, listeners: ls}
}

// Plan returns the plan that is run.
func (r *Runner) Plan() *plan.Plan { return r.engine.Plan() }

// View returns how things stood at the last Tick or Do.
func (r *Runner) View() engine.View { return r.engine.View() }

// Tick brings the run up to the present. Where the clocks show that the host
// was away it pauses the run at the moment last seen, and returns how long, in
// the clock's time; below zero where the wall clock was set back.
func (r *Runner) Tick() (away time.Duration) {
	mono, wall := r.clock.Mono(), r.clock.Wall()
	last := r.watch.mono
	away = r.watch.look(mono, wall)
	if away != 0 && r.running() {
		r.tell(r.engine.Do(engine.Gap, last))
	} else {
		away = 0
	}
	r.tell(r.engine.Advance(mono))
	return away
}

// Do brings the run up to the present, then acts.
func (r *Runner) Do(a engine.Action) {
	r.Tick()
	r.tell(r.engine.Do(a, r.clock.Mono()))
}

// Next returns how long it is until something happens by itself, and whether
// anything will.
func (r *Runner) Next() (time.Duration, bool) {
	at, ok := r.engine.NextDeadline()
	return at - r.clock.Mono(), ok
}

// running reports whether time that passes unseen would be lost to the player.
func (r *Runner) running() bool {
	switch r.engine.View().Phase {
	case engine.Running, engine.Overtime, engine.CountedIn:
		return true
	}
	return false
}

// tell hands events to every listener.
func (r *Runner) tell(events []engine.Event) {
	if len(events) == 0 {
		return
	}
	v := r.engine.View()
	for _, l := range r.listeners {
		l.Heard(events, v)
	}
}

// Package enginetest drives an engine for the tests of those who listen to it.
package enginetest

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
)

// Drive walks a plan by a clock and tells its listeners. It is not safe for
// concurrent use.
type Drive struct {
	engine    *engine.Engine
	now       func() time.Duration
	listeners []engine.Listener
}

// New returns a Drive of p that has not started. Now reads the clock.
func New(p *plan.Plan, o engine.Options, now func() time.Duration, ls ...engine.Listener) *Drive {
	return &Drive{engine.New(p, o), now, ls}
}

// Since returns a clock that starts now and runs speed times as fast as the
// wall's.
func Since(speed float64) func() time.Duration {
	start := time.Now()
	return func() time.Duration { return time.Duration(float64(time.Since(start)) * speed) }
}

// Tick brings the engine up to the present.
func (d *Drive) Tick() { d.tell(d.engine.Advance(d.now())) }

// Do brings the engine up to the present, then acts.
func (d *Drive) Do(a engine.Action) {
	d.Tick()
	d.tell(d.engine.Do(a, d.now()))
}

// Gap pauses the run as a host does that was away since moment at.
func (d *Drive) Gap(at time.Duration) { d.tell(d.engine.Do(engine.Gap, at)) }

// View returns how things stand.
func (d *Drive) View() engine.View { return d.engine.View() }

// tell hands events to every listener.
func (d *Drive) tell(events []engine.Event) {
	if len(events) == 0 {
		return
	}
	for _, l := range d.listeners {
		l.Heard(events, d.engine.View())
	}
}

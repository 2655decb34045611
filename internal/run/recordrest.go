package run

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// restEnded is a rest that has ended, and is written once work begins: a count-in
// that follows it is still rest for a player who is getting into position.
type restEnded struct {
	event         engine.Event // of its end
	zero          time.Time    // Recorder.zero then
	taken, paused time.Duration
	place, left   journal.Place // of the set before it, and of the rest itself
	since         time.Duration // host's time at which the count-in was paused; 0: it is not
}

// restGoesOn takes what happens between the end of a rest and the work after it.
func (r *Recorder) restGoesOn(e engine.Event) {
	if r.rest == nil {
		return
	}
	if since := r.rest.since; since > 0 && (e.Kind == engine.CountIn || e.Kind == engine.Resumed || e.Kind == engine.StepEnded) {
		r.rest.paused += e.Now - since + r.zero.Sub(r.rest.zero)
		r.rest.since = 0
	}
	switch e.Kind {
	case engine.Paused:
		r.rest.since = e.Now
	case engine.Resumed, engine.StepEnded:
		r.rest.taken += e.Now - r.rest.event.Now + r.zero.Sub(r.rest.zero)
		r.writeRest(e)
	}
}

// restIsOver writes the rest that has ended if no count-in follows it.
func (r *Recorder) restIsOver(v engine.View) {
	if r.rest != nil && v.Phase != engine.CountedIn && v.Phase != engine.Halted {
		r.writeRest(r.rest.event)
	}
}

// writeRest writes the rest as one that lasted until an event, and how it was
// left.
func (r *Recorder) writeRest(until engine.Event) {
	x := r.rest
	r.rest = nil
	cause := string(x.event.Cause)
	r.writeAt(until, journal.Line{Event: journal.EventRest, Rest: &journal.Rest{Place: x.place, PrescribedS: units.InSeconds(x.event.Length),
		TakenS: units.InSeconds(x.taken), PausedS: units.InSeconds(x.paused), End: cause}})
	if moves(x.event.Cause) {
		r.writeAt(until, journal.Line{Event: journal.EventMove, Move: &journal.Move{Cause: cause, Kind: string(plan.Rest), Place: x.left}})
	}
}

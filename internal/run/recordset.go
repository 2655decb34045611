package run

import (
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// stepEnded keeps what ended a step, and writes of a rest and of a move.
func (r *Recorder) stepEnded(e engine.Event, step plan.Step) {
	switch step.Kind {
	case plan.Work:
		r.ends[e.Step] = e.Cause
	case plan.Rest:
		halted := e.Halted + r.asleep() + r.between(e)
		r.rest = &restEnded{event: e, zero: r.zero, taken: e.Taken + halted, paused: halted, place: r.before(e.Step), left: placeOf(step)}
		if !moves(e.Cause) { // no count-in follows
			r.writeRest(e)
		}
		return
	}
	if moves(e.Cause) {
		r.writeAt(e, journal.Line{Event: journal.EventMove, Move: &journal.Move{Cause: string(e.Cause), Kind: string(step.Kind), Place: placeOf(step)}})
	}
}

// moves reports whether a step that ended so was left for another than the next.
func moves(c engine.Cause) bool {
	return c == engine.BySkip || c == engine.ByBack || c == engine.ByRepeat
}

// asleep returns how long the host's clock stopped in the step in hand while the
// wall's went on, as it does on a machine that sleeps.
func (r *Recorder) asleep() time.Duration {
	return r.zero.Sub(r.restZero)
}

// between returns how much longer a rest has lasted that began in an earlier
// process than was counted on: the time in which nobody was at the run.
func (r *Recorder) between(e engine.Event) time.Duration {
	if r.restSince.IsZero() {
		return 0
	}
	return max(0, r.start.Sub(r.restSince)-r.opts.Into)
}

// set returns what was done of a set.
func (r *Recorder) set(e engine.Event) *journal.Set {
	planned := r.plan.Sets[e.Set.Set]
	written := r.plan.Exercise(planned.First)
	exercise := written.In(e.Set.Easier)
	s := &journal.Set{Place: journal.Place{Block: planned.Block, Round: planned.Round, Exercise: planned.Exercise}, Name: written.Name,
		Outcome: string(e.Set.Outcome), End: string(e.Cause), ByHand: r.opts.Waits(r.plan.Steps[planned.First]),
		PlannedS: units.InSeconds(e.Set.Planned), TakenS: units.InSeconds(e.Taken), PausedS: units.InSeconds(e.Halted),
		Reps: e.Set.Reps, Planned: planned.Reps, Contacts: contacts(exercise, e.Set),
		Sides: make([]string, len(e.Set.Sides)), Easier: e.Set.Easier, Paced: true}
	for i, side := range e.Set.Sides {
		s.Sides[i] = string(side)
	}
	if e.Set.Easier && exercise.Name != written.Name {
		s.Variant = exercise.Name
	}
	for i := planned.First; i <= planned.Last; i++ {
		if r.plan.Steps[i].Kind == plan.Work && r.ends[i] != engine.ByClock {
			s.Paced = false
		}
	}
	return s
}

// before returns the place of the set that step i follows.
func (r *Recorder) before(i int) journal.Place {
	for ; i >= 0; i-- {
		if s := r.plan.Steps[i]; s.Set >= 0 {
			return placeOf(s)
		}
	}
	return journal.Place{}
}

// swapped writes that an exercise's variant changed: the one at hand, or the
// one that comes next.
func (r *Recorder) swapped(e engine.Event) {
	s := r.plan.Steps[r.plan.Meant(e.Step)]
	r.writeAt(e, journal.Line{Event: journal.EventVariant, Variant: &journal.Variant{Place: placeOf(s), Name: s.Name, Easier: e.Easier}})
}

// placeOf returns the place of a step.
func placeOf(s plan.Step) journal.Place {
	return journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}
}

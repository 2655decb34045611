package run

import (
	"slices"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
)

// results holds the tries whose results the player is still to be asked for. It
// is an engine.Listener.
type results struct {
	plan    *plan.Plan
	due     []plan.Try
	unasked bool // nobody would keep them: there is no log, or the run is a rehearsal
}

// Heard implements engine.Listener.
func (r *results) Heard(events []engine.Event, _ engine.View) {
	for _, e := range events {
		if e.Kind == engine.SetEnded && e.Set.Outcome != engine.Skipped {
			r.ask(e.Set.Set, e.Set.Sides)
		}
	}
}

// ask adds the tries of a set on the sides that were worked, each once.
func (r *results) ask(set int, worked []plan.Side) {
	if r.unasked {
		return
	}
	for _, t := range r.plan.Tries(set) {
		if t.Side == plan.Both && len(worked) == 0 || t.Side != plan.Both && !slices.Contains(worked, t.Side) {
			continue
		}
		if !slices.Contains(r.due, t) {
			r.due = append(r.due, t)
		}
	}
}

// missed asks for the tries of the sets that an earlier part of the run did
// without a result.
func (r *results) missed(earlier *journal.Run) {
	for i, s := range r.plan.Sets {
		at := journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}
		if slices.ContainsFunc(earlier.Sets, func(x journal.Set) bool { return x.Place == at && x.Outcome != string(engine.Skipped) }) {
			r.ask(i, []plan.Side{plan.Left, plan.Right})
		}
	}
	r.due = slices.DeleteFunc(r.due, func(t plan.Try) bool {
		s := r.plan.Sets[t.Set]
		at := journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}
		return slices.ContainsFunc(earlier.Measures, func(m journal.Measure) bool {
			return m.Place == at && m.Side == string(t.Side) && m.Try == t.Number
		})
	})
}

// Due returns the tries whose results the player is still to be asked for, the
// earliest first.
func (a *Active) Due() []plan.Try { return a.results.due }

// Measured logs what came out of a try that was due, in its measure's unit; nil
// leaves it out. It is not asked for again.
func (a *Active) Measured(t plan.Try, value *float64) {
	a.results.due = slices.DeleteFunc(slices.Clone(a.results.due), func(d plan.Try) bool { return d == t })
	if a.recorder != nil {
		a.recorder.Measure(t, value)
	}
}

// Measure writes what came out of a try; nil if it was left out.
func (r *Recorder) Measure(t plan.Try, value *float64) {
	s := r.plan.Sets[t.Set]
	r.write(r.zero.Add(r.clock.Mono()), r.last, journal.Line{Event: journal.EventMeasure, Measure: &journal.Measure{
		Place: journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}, Name: r.plan.Steps[s.First].Name,
		Side: string(t.Side), Try: t.Number, Measure: string(t.Measure), Value: value, Way: t.Way, Practice: t.Practice}})
}

package run

import (
	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
)

// tally is what has been done so far, with or without a log: a run as a reader
// of the journal would see it. It is an engine.Listener.
type tally struct {
	plan *plan.Plan
	run  journal.Run
}

// newTally returns a tally of p of which nothing was done.
func newTally(p *plan.Plan) *tally {
	t := &tally{plan: p}
	t.run.Started = &journal.Started{Title: p.Session.Title, Blocks: Prescribed(p)}
	return t
}

// Heard implements engine.Listener.
func (t *tally) Heard(events []engine.Event, _ engine.View) {
	for _, e := range events {
		if e.Kind == engine.SetEnded {
			s := t.plan.Sets[e.Set.Set]
			t.run.Sets = append(t.run.Sets, journal.Set{Outcome: string(e.Set.Outcome),
				Place: journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}})
		}
	}
}

// Rounds returns how many rounds of each block had all of their sets done so
// far, those of an earlier part of the run among them.
func (a *Active) Rounds() []int { return a.tally.run.RoundsCounted() }

// LoggedAs says how a run that has ended stands in the log, with what the player
// said of it: where it is shown, or why it counts for nothing.
func (a *Active) LoggedAs(said journal.Rating, l *text.Language) string {
	if worked(&a.tally.run) || said.RPE != nil || said.Pain != nil || said.Note != nil {
		return l.Step.Logged
	}
	return l.Step.Empty
}

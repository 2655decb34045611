package run

import (
	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
)

// Log is what the journal tells at the start of the program.
type Log struct {
	Journal    *journal.Journal
	Runs       []*journal.Run // lean, the earliest first
	Unfinished []*journal.Run // in full, the latest first; none that another process is at
}

// OpenLog opens the journal at path, which it makes sure can be written, and
// reads it. Damaged lines are passed over here: they are reported where the
// log is looked at.
func OpenLog(path string) (Log, error) {
	j, err := journal.Open(path)
	if err != nil {
		return Log{}, err
	}
	l := Log{Journal: j}
	o, err := j.Overview()
	if err != nil {
		return Log{}, err
	}
	l.Runs = o.Runs
	for _, r := range unfinished(j, l.Runs) {
		full, err := o.Full(r)
		if err != nil {
			return Log{}, err
		}
		l.Unfinished = append(l.Unfinished, full)
	}
	return l, nil
}

// First reports whether nobody has run a session yet.
func (l Log) First() bool { return len(l.Runs) == 0 }

// tally counts the sets that were done, so that the form after a run can be
// filled in. It is a engine.Listener.
type tally struct {
	plan *plan.Plan
	done map[int]bool // by index into the plan's sets
}

// newTally returns a tally of p that begins with the sets that an earlier
// part of the run gave.
func newTally(p *plan.Plan, earlier []journal.Set) *tally {
	t := &tally{plan: p, done: map[int]bool{}}
	at := map[journal.Place]bool{}
	for _, s := range earlier {
		at[s.Place] = at[s.Place] || s.Outcome == journal.Done
	}
	for i, s := range p.Sets {
		t.done[i] = at[journal.Place{Block: s.Block, Round: s.Round, Exercise: s.Exercise}]
	}
	return t
}

// Heard implements engine.Listener.
func (t *tally) Heard(events []engine.Event, _ engine.View) {
	for _, e := range events {
		if e.Kind == engine.SetEnded {
			t.done[e.Set.Set] = e.Set.Outcome == engine.Done
		}
	}
}

// rounds returns how many rounds of each block had all of their sets done.
func (t *tally) rounds() []int {
	type round struct{ block, round int }
	whole := map[round]bool{}
	for i, s := range t.plan.Sets {
		r := round{s.Block, s.Round}
		was, seen := whole[r]
		whole[r] = t.done[i] && (was || !seen)
	}
	n := make([]int, len(t.plan.Blocks))
	for r, done := range whole {
		if done {
			n[r.block-1]++
		}
	}
	return n
}

package review

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
)

// gist is what the review takes of a run. It is made of the run alone, so that
// many can be made at a time and kept, and is added up at little cost.
type gist struct {
	*journal.Run // may be lean

	// Of a run that counts.
	rounds     Share // of all blocks
	known      bool  // somebody knows how many rounds were done
	sets, reps Share
	notBegun   int // sets prescribed that the session ended before
	rests      []restsOf
	exercises  []setsOf // in the order of their last sets
	results    []measured.Result
}

// restsOf is the rests of a run that ended on one date.
type restsOf struct {
	at                          day
	count, kept, early, overrun int // those that no work followed in none
	prescribed, taken           time.Duration
	off                         []offBy // in order
}

// offBy is how many rests were off by so many steps of Resolution.
type offBy struct{ step, n int32 }

// setsOf is the sets of a run that are of one exercise.
type setsOf struct {
	name                           string
	sets, partial, skipped, easier int
	variant                        string // that the easier variant had last; may be empty
}

// gistOf makes the gist of a run, its rests judged with the tolerance.
func gistOf(run *journal.Run, t Tolerance) *gist {
	g := &gist{Run: run}
	if run.Fate() != journal.Counted {
		return g
	}
	done := run.RoundsDone()
	g.known = done != nil
	for i, b := range run.Blocks() {
		g.rounds.Prescribed += b.Rounds
		if i < len(done) {
			g.rounds.Done += done[i]
		}
		if !run.OnPaper() {
			g.sets.Prescribed += b.Sets
		}
	}
	if run.Started != nil {
		g.sets.Done = run.SetsDone().N
	}
	g.addSets()
	for i := range run.Rests {
		g.addRest(t, &run.Rests[i])
	}
	for i := range g.rests {
		slices.SortFunc(g.rests[i].off, func(a, b offBy) int { return cmp.Compare(a.step, b.step) })
	}
	g.measure()
	return g
}

// addSets counts the sets by their exercise.
func (g *gist) addSets() {
	places := make([]journal.Place, 0, len(g.Run.Sets))
	for i := range g.Run.Sets {
		set := &g.Run.Sets[i]
		places = append(places, set.Place)
		g.reps.Done += set.Reps
		g.reps.Prescribed += set.Planned
		var of setsOf
		if at := slices.IndexFunc(g.exercises, func(x setsOf) bool { return x.name == set.Name }); at >= 0 {
			of = g.exercises[at]
			g.exercises = slices.Delete(g.exercises, at, at+1)
		}
		of.name = set.Name
		of.add(set)
		g.exercises = append(g.exercises, of)
	}
	slices.SortFunc(places, journal.Place.Compare)
	g.notBegun = max(0, g.sets.Prescribed-len(slices.Compact(places)))
}

// add counts a set.
func (x *setsOf) add(set *journal.Set) {
	x.sets++
	switch set.Outcome {
	case journal.Partial:
		x.partial++
	case journal.Skipped:
		x.skipped++
	}
	if set.Easier && set.Outcome != journal.Skipped {
		x.easier++
		if set.Variant != "" {
			x.variant = set.Variant
		}
	}
}

// addRest judges a rest.
func (g *gist) addRest(t Tolerance, r *journal.Rest) {
	at := dayOf(g.Start)
	if !r.At.IsZero() {
		at = dayOf(r.At)
	}
	i := slices.IndexFunc(g.rests, func(x restsOf) bool { return x.at == at })
	if i < 0 {
		i = len(g.rests)
		g.rests = append(g.rests, restsOf{at: at})
	}
	g.rests[i].add(t, r)
}

// measure keeps what the run measured, on the day of the set.
func (g *gist) measure() {
	for _, m := range g.Run.Measures {
		at := g.Start
		for i := range g.Run.Sets {
			if g.Run.Sets[i].Place == m.Place && !g.Run.Sets[i].At.IsZero() {
				at = g.Run.Sets[i].At
			}
		}
		g.results = append(g.results, measured.Result{Name: m.Name, Measure: m.Measure, Way: m.Way, Side: m.Side,
			At: at, Value: m.Value, Practice: m.Practice})
	}
}

// session returns the run's figures.
func (g *gist) session(player string) *Session {
	s := &Session{Run: g.Run, Player: player, Known: g.known, Sets: g.sets, Reps: g.reps}
	done := g.RoundsDone()
	for i, b := range g.Blocks() {
		blk := Block{Title: b.Title, Share: Share{Prescribed: b.Rounds}}
		if i < len(done) {
			blk.Done = done[i]
		}
		s.Rounds = append(s.Rounds, blk)
	}
	for i := range g.rests {
		s.Rest.take(&g.rests[i])
	}
	s.Load, s.Rated = g.Load()
	return s
}

// rated reports whether the run has an effort.
func (g *gist) rated() bool { return g.Rating.RPE != nil }

// nameOf names gists that are made with a tolerance.
func nameOf(t Tolerance) string {
	return fmt.Sprintf("gists, rests kept within %v or %v", t.Time, t.Part)
}

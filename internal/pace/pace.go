// Package pace learns from a player's own sets how long a rep of each exercise
// takes them, and how long a session will.
package pace

import (
	"slices"
	"strings"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// The least that tells something of a player's own pace of an exercise. Our
// own choice: below it the range of Length holds far fewer sessions than it
// says.
const (
	MinSets     = 6
	MinSessions = 3
)

// Sessions is how many of the latest sessions show a player's pace, about
// five months of three a week. Our own choice: what one did years ago is no pace of
// today.
const Sessions = 60

// Table is what the runs of one player show of their pace.
type Table struct {
	exercises map[key]*exercise
}

// key names what reps are compared with: the same exercise at the same
// prescribed length of a rep, which is the tempo's sum if there is one.
type key struct {
	name   string // as Name gives it
	rep    time.Duration
	easier bool
}

// exercise is the sets of one key.
type exercise struct {
	name string // as it was written last
	days []daySets
}

// daySets is the sets of one session: lengths of a rep in seconds.
type daySets struct {
	run   string
	own   []float64 // of sets that the player ended
	clock []float64 // of sets that the clock ended: the player was no faster
}

// Rep is how long a rep of an exercise takes the player. It rests on the sets
// alone that the player ended, by hand or early. An early end can only show
// that a player was faster than the clock: if most sets run to the clock, the
// median is that of the fast ones.
type Rep struct {
	Name         string
	Easier       bool
	Prescribed   time.Duration
	Median       time.Duration
	First, Third time.Duration // quartiles: half of the sets lie between
	Sets         int
	Sessions     int
}

// Enough reports whether there are enough sets to go by.
func (r Rep) Enough() bool { return r.Sets >= MinSets && r.Sessions >= MinSessions }

// Of returns the table of the runs of one player. Withdrawn runs and
// rehearsals tell nothing.
func Of(runs []*journal.Run) *Table {
	t := &Table{exercises: map[key]*exercise{}}
	for _, r := range runs {
		if r.Withdrawn || r.Rehearsal() {
			continue
		}
		for i := range r.Sets {
			t.add(r.ID, &r.Sets[i])
		}
	}
	return t
}

// add takes one set, if it was of reps and done in full.
func (t *Table) add(run string, s *journal.Set) {
	if engine.Outcome(s.Outcome) != engine.Done || s.Planned <= 0 || s.Reps <= 0 || s.TakenS <= 0 {
		return
	}
	k := key{fold(s.Name), units.Seconds(s.PlannedS / float64(s.Planned)), s.Easier}
	e := t.exercises[k]
	if e == nil {
		e = &exercise{}
		t.exercises[k] = e
	}
	e.name = s.Name
	if n := len(e.days); n == 0 || e.days[n-1].run != run {
		e.days = append(e.days, daySets{run: run})
	}
	d := &e.days[len(e.days)-1]
	rep := s.TakenS / float64(s.Reps)
	if s.Paced {
		d.clock = append(d.clock, rep)
	} else {
		d.own = append(d.own, rep)
	}
}

// fold makes names that differ in case or spaces the same.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// rep sums up the sets that the player ended.
func (e *exercise) rep(k key) Rep {
	r := Rep{Name: e.name, Easier: k.easier, Prescribed: k.rep}
	var own []float64
	for _, d := range e.days {
		if len(d.own) > 0 {
			own = append(own, d.own...)
			r.Sessions++
		}
	}
	r.Sets = len(own)
	if r.Sets > 0 {
		slices.Sort(own)
		r.First, r.Median, r.Third = units.Seconds(quantile(own, .25)), units.Seconds(quantile(own, .5)), units.Seconds(quantile(own, .75))
	}
	return r
}

// quantile returns a quantile of sorted figures, interpolated between order
// statistics at p·(n−1), which is what spreadsheets do.
func quantile(x []float64, p float64) float64 {
	h := p * float64(len(x)-1)
	i := int(h)
	if i+1 >= len(x) {
		return x[len(x)-1]
	}
	return x[i] + (h-float64(i))*(x[i+1]-x[i])
}

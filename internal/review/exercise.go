package review

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
)

// Exercise is how often an exercise was left out, done in part or taken easier,
// across all sessions.
type Exercise struct {
	Name    string // as in the latest session
	Sets    int    // that ended, those done again among them
	Partial int    // of Sets: done in part
	Skipped int    // of Sets: left out
	Easier  int    // of Sets: in the easier variant
	Variant string // the name that the variant had last; may be empty
	Last    time.Time

	latest time.Time
}

// trouble is how many sets were not as prescribed.
func (e *Exercise) trouble() int { return e.Partial + e.Skipped + e.Easier }

// exercise counts the sets of a session by their exercise.
func (p *tally) exercise(s *Session) {
	places := map[journal.Place]bool{}
	for i := range s.Run.Sets {
		set := &s.Run.Sets[i]
		places[set.Place] = true
		key := fold(set.Name)
		e := p.exercises[key]
		if e == nil {
			e = &Exercise{}
			p.exercises[key] = e
		}
		e.Sets++
		before := e.trouble()
		switch set.Outcome {
		case journal.Partial:
			e.Partial++
		case journal.Skipped:
			e.Skipped++
		}
		if set.Easier && set.Outcome != journal.Skipped {
			e.Easier++
			if set.Variant != "" {
				e.Variant = set.Variant
			}
		}
		if !s.Start.Before(e.latest) {
			e.Name, e.latest = set.Name, s.Start
		}
		if e.trouble() > before && s.Start.After(e.Last) {
			e.Last = s.Start
		}
	}
	p.NotBegun += max(0, s.Sets.Prescribed-len(places))
}

// layOutExercises sorts the exercises that something is to be said of, the most
// first.
func (p *tally) layOutExercises() {
	for _, e := range p.exercises {
		if e.trouble() > 0 {
			p.Exercises = append(p.Exercises, *e)
		}
	}
	slices.SortFunc(p.Exercises, func(a, b Exercise) int {
		return cmp.Or(cmp.Compare(b.trouble(), a.trouble()), strings.Compare(a.Name, b.Name))
	})
}

// fold makes names that differ in case or spaces the same.
func fold(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }

// measure keeps what a run measured, on the day of the set.
func (p *tally) measure(r *journal.Run) {
	for _, m := range r.Measures {
		at := r.Start
		for i := range r.Sets {
			if r.Sets[i].Place == m.Place && !r.Sets[i].At.IsZero() {
				at = r.Sets[i].At
			}
		}
		p.results = append(p.results, measured.Result{Name: m.Name, Measure: m.Measure, Way: m.Way, Side: m.Side,
			At: at, Value: m.Value, Practice: m.Practice})
	}
}

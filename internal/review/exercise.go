package review

import (
	"cmp"
	"slices"
	"strings"
	"time"
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
func (p *tally) exercise(s *gist, folded map[string]string) {
	for i := range s.exercises {
		x := &s.exercises[i]
		key, ok := folded[x.name]
		if !ok {
			key = fold(x.name)
			folded[x.name] = key
		}
		e := p.exercises[key]
		if e == nil {
			e = &Exercise{}
			p.exercises[key] = e
		}
		before := e.trouble()
		e.Sets += x.sets
		e.Partial += x.partial
		e.Skipped += x.skipped
		e.Easier += x.easier
		if x.variant != "" {
			e.Variant = x.variant
		}
		if !s.Start.Before(e.latest) {
			e.Name, e.latest = x.name, s.Start
		}
		if e.trouble() > before && s.Start.After(e.Last) {
			e.Last = s.Start
		}
	}
	p.NotBegun += s.notBegun
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

package check

import (
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// effort looks at the length of one effort where maximal power is trained.
func effort(c *checker) {
	most := units.Seconds(c.limit("power_effort").High)
	seen := map[*sessions.Exercise]bool{}
	for _, s := range c.sets {
		if !s.traits.has(quick) || s.longest <= most || seen[s.exercise] {
			continue
		}
		seen[s.exercise] = true
		e := s.exercise
		reps := max(e.Reps, e.RepsPerSide)
		custom := reps > 0 && float64(reps) <= c.limit("power_reps").High
		f := figures{"effort_s": s.longest.Seconds(), "high_s": most.Seconds(), "reps": reps}
		if custom || !s.traits.has(jump) {
			c.add(Note, e.Marks.At(doseKey(e)), f, "one effort of %s lasts %s; the handbook's range at maximal power is %s, practice is %s reps a set or a side (%s)",
				quote(e.Name), span(s.longest), c.cite("power_effort"), c.span("power_reps"), c.source("power_reps"))
			continue
		}
		c.add(Warning, e.Marks.At(doseKey(e)), f, "one effort of %s lasts %s, longer than maximal power does: %s, and longer than the %s reps of practice",
			quote(e.Name), span(s.longest), c.cite("power_effort"), c.span("power_reps"))
	}
}

// doseKey returns the key that gives an exercise's work.
func doseKey(e *sessions.Exercise) string {
	switch {
	case e.Reps > 0:
		return "reps"
	case e.RepsPerSide > 0:
		return "reps_per_side"
	case e.Time > 0:
		return "time"
	}
	return "time_per_side"
}

package check

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/units"

	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// tooLong is the effort that is no longer one at maximal power by any reading:
// the energy-system table's next row ends with it, 15–30 s at 75–90 % (NSCA
// Essentials, from memory).
const tooLong = 30 * time.Second

// effort looks at the length of one effort that is done at maximal power.
func effort(c *checker) {
	most := units.Seconds(c.limit("power_effort").High)
	var noted []string // efforts that practice still has
	var lengths []float64
	var at yamlread.Pos
	seen := map[*sessions.Exercise]bool{}
	for _, s := range c.sets {
		e := s.exercise
		if !s.fast() || s.longest <= most || seen[e] || !timed(e) && e.Rep >= slowRep {
			continue // with so long a rep, the effort is a rep and the rest its reset
		}
		seen[e] = true
		custom := reps(e) > 0 && float64(reps(e)) <= c.limit("power_reps").High
		if !custom && (s.jump || s.longest > tooLong) {
			c.tooLong(s, most)
			continue
		}
		if len(noted) == 0 {
			at = e.Marks.At(doseKey(e))
		}
		noted = append(noted, fmt.Sprintf("%s lasts %s", quote(e.Name), span(s.longest)))
		lengths = append(lengths, s.longest.Seconds())
	}
	if len(noted) > 0 {
		c.add(Note, at, figures{"effort_s": lengths, "high_s": most.Seconds()},
			"one effort of %s; the handbook's range at maximal power is %s, practice is %s reps a set or a side (%s)",
			strings.Join(noted, ", of "), c.cite("power_effort"), c.span("power_reps"), c.source("power_reps"))
	}
}

// tooLong warns of a set whose efforts no source calls maximal power.
func (c *checker) tooLong(s set, most time.Duration) {
	e := s.exercise
	f := figures{"effort_s": s.longest.Seconds(), "high_s": most.Seconds(), "reps": reps(e)}
	if timed(e) {
		c.say(Warning, e.Marks.At(doseKey(e)), f, c.w.TimedEffort(c.name(e.Name), span(s.longest), c.cite("power_effort")))
		return
	}
	c.say(Warning, e.Marks.At(doseKey(e)), f, c.w.Effort(c.name(e.Name), span(s.longest), c.cite("power_effort"), c.span("power_reps"), c.source("power_reps")))
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

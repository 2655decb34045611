package sessions

import (
	"math"
	"time"
)

// Bounds of a plan; a longer one is refused before it is built.
const (
	MaxSteps  = 10_000
	MaxLength = 6 * time.Hour
)

// Size returns how many steps the plan of s has and how long it is, by
// arithmetic alone, so that an absurd file costs nothing. Figures too large
// to hold come back as math.MaxInt64. It asks for no valid session.
func Size(s *Session) (steps int64, length time.Duration) {
	var c count
	c.times(1, s.LeadIn)
	for i := range s.Blocks {
		b := &s.Blocks[i]
		rounds := int64(max(b.Rounds, 0))
		for j := range b.Exercises {
			c.exercise(rounds, &b.Exercises[j])
			if j < len(b.Exercises)-1 {
				gap := b.Change
				if r := b.Exercises[j].Rest; r != nil {
					gap = *r
				}
				c.times(rounds, gap)
			}
		}
		c.times(rounds-1, b.Rest)
		if i < len(s.Blocks)-1 {
			c.times(min(rounds, 1), b.RestAfter)
		}
	}
	return c.steps, time.Duration(c.length)
}

// count is a sum of steps that saturates and never overflows.
type count struct{ steps, length int64 }

// exercise counts the work steps, and the switches, of e in n rounds.
func (c *count) exercise(n int64, e *Exercise) {
	length := int64(e.Time) + int64(e.TimePerSide)
	if reps := int64(e.Reps) + int64(e.RepsPerSide); reps > 0 {
		length = mul(reps, int64(e.Rep))
	}
	switch {
	case !e.OneSided():
		c.times(n, time.Duration(length))
	case e.Sides == AlternateReps:
		c.times(n, time.Duration(mul(2, length)))
	default:
		c.times(n, time.Duration(length))
		c.times(n, time.Duration(length))
		c.times(n, e.Switch)
	}
}

// times adds n steps of one length; steps of no length do not count.
func (c *count) times(n int64, length time.Duration) {
	if n <= 0 || length <= 0 {
		return
	}
	c.steps = add(c.steps, n)
	c.length = add(c.length, mul(n, int64(length)))
}

// add and mul saturate; their arguments are not negative.
func add(a, b int64) int64 {
	if a > math.MaxInt64-b {
		return math.MaxInt64
	}
	return a + b
}

func mul(a, b int64) int64 {
	if a != 0 && b > math.MaxInt64/a {
		return math.MaxInt64
	}
	return a * b
}

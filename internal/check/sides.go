package check

import (
	"strings"
	"time"
	"unicode"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// sides looks whether left and right do the same over the session, and which
// starts.
func sides(c *checker) {
	work := map[plan.Side]*sideWork{plan.Left: {}, plan.Right: {}, plan.Both: {}, plan.Alternate: {}}
	starts := map[plan.Side]int{}
	var first *sessions.Exercise
	for _, s := range c.sets {
		for _, step := range c.p.Steps[s.First : s.Last+1] {
			if step.Kind == plan.Work {
				work[sideOf(step.Side, s.exercise)].add(step.Reps, step.Length)
			}
		}
		if side := c.p.Steps[s.First].Side; side == plan.Left || side == plan.Right {
			starts[side]++
			if first == nil {
				first = s.exercise
			}
		}
	}
	c.unequal(*work[plan.Left], *work[plan.Right])
	n := starts[plan.Left] + starts[plan.Right]
	for side, k := range starts {
		if k == n && n > 1 {
			c.add(Note, first.Marks.At("sides"), figures{"starts": n},
				"the %s side starts all %d sets that are done a side; sides: swap-each-round shares the start", side, n)
		}
	}
}

// sideOf returns the side that a work step counts for: the plan's, or that
// which the exercise's name says where it is written for one side alone.
func sideOf(side plan.Side, e *sessions.Exercise) plan.Side {
	if side != plan.Both {
		return side
	}
	var left, right bool
	for word := range strings.FieldsFuncSeq(strings.ToLower(e.Name), func(r rune) bool { return !unicode.IsLetter(r) }) {
		left = left || word == "left"
		right = right || word == "right"
	}
	switch {
	case left && !right:
		return plan.Left
	case right && !left:
		return plan.Right
	}
	return plan.Both
}

// sideWork is what one side of the body does.
type sideWork struct {
	reps int
	time time.Duration
}

func (w *sideWork) add(reps int, t time.Duration) {
	w.reps += reps
	if reps == 0 {
		w.time += t
	}
}

// unequal warns where one side does more than the other, which takes
// exercises that are written for one side alone.
func (c *checker) unequal(left, right sideWork) {
	if left == right {
		return
	}
	c.add(Warning, c.s.Marks.At("blocks"), figures{"left_reps": left.reps, "right_reps": right.reps,
		"left_s": left.time.Seconds(), "right_s": right.time.Seconds()},
		"left does %d reps and %s of timed work, right %d reps and %s: give both sides the same, with reps_per_side or time_per_side",
		left.reps, span(left.time), right.reps, span(right.time))
}

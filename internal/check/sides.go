package check

import (
	"slices"
	"strings"
	"time"
	"unicode"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// sides looks at whether left and right do the same over the session, and which
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
		// In a block of one round there is no second one to swap the start in.
		if side := c.p.Steps[s.First].Side; (side == plan.Left || side == plan.Right) && s.block.Rounds > 1 {
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
				"the %s side starts all %d sets done one side at a time; sides: swap-each-round shares the start", side, n)
		}
	}
}

// sideOf returns the side that a work step counts for: the plan's, or that
// which the exercise's name says if it is written for one side alone.
func sideOf(side plan.Side, e *sessions.Exercise) plan.Side {
	if side != plan.Both {
		return side
	}
	return sideNamed(e.Name)
}

// The words for the sides, and for what of the body has sides.
var (
	leftWords  = []string{"left", "links", "linkes", "linker", "linke", "linkem", "linken"}
	rightWords = []string{"right", "rechts", "rechtes", "rechter", "rechte", "rechtem", "rechten"}
	limbWords  = []string{"foot", "leg", "side", "arm", "hand", "knee", "hip", "bein", "fuß", "seite", "arm", "knie", "hüfte"}
)

// sideNamed returns the side of the body that a name says: "Left-foot hop",
// "Side plank, right". A direction is none: "Hop left of the line", "From left
// to right", "Hop to the left".
func sideNamed(name string) plan.Side {
	list := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) })
	var left, right bool
	for i, w := range list {
		isLeft, isRight := slices.Contains(leftWords, w), slices.Contains(rightWords, w)
		if !isLeft && !isRight {
			continue
		}
		last := i == len(list)-1
		limb := !last && slices.Contains(limbWords, list[i+1])
		towards := i > 0 && slices.Contains([]string{"to", "the", "from", "and", "or", "nach", "von", "und"}, list[i-1])
		if limb || (last || i == 0 && !slices.Contains([]string{"of", "to", "and", "or", "then", "von", "und", "nach"}, list[1])) && !towards {
			left, right = left || isLeft, right || isRight
		}
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

// unequal warns if one side does more than the other, which takes
// exercises that are written for one side alone.
func (c *checker) unequal(left, right sideWork) {
	if left == right {
		return
	}
	c.say(Warning, c.s.Marks.At("blocks"), figures{"left_reps": left.reps, "right_reps": right.reps,
		"left_s": left.time.Seconds(), "right_s": right.time.Seconds()},
		c.w.Sides(left.reps, span(left.time), right.reps, span(right.time)))
}

package check

import (
	"fmt"
	"sort"
	"time"

	"coldfloor/sessions"
)

// phosphocreatine is what of the resting phosphocreatine was measured so long
// after a 30 s all-out cycling sprint (Bogdanis et al., J Physiol
// 1995;482:467–480, 14 men).
var phosphocreatine = []struct {
	after   time.Duration
	percent float64
}{
	{0, 19.7},
	{90 * time.Second, 65.0},
	{360 * time.Second, 85.5},
}

// Phosphocreatine returns how much of the resting phosphocreatine is back so
// long after a 30 s all-out sprint, in percent, on straight lines between the
// measured points of Bogdanis et al., J Physiol 1995;482:467–480. Beyond the
// last of them, at 360 s, nothing was measured and ok is false.
func Phosphocreatine(after time.Duration) (percent float64, ok bool) {
	points := phosphocreatine
	i := sort.Search(len(points), func(i int) bool { return points[i].after >= after })
	if i == len(points) || after < 0 {
		return 0, false
	}
	if i == 0 {
		return points[0].percent, true
	}
	a, b := points[i-1], points[i]
	return a.percent + (b.percent-a.percent)*float64(after-a.after)/float64(b.after-a.after), true
}

// recovery shows, of each block that trains maximal power, how much of the
// phosphagens would be back at the start of its sets that count.
func recovery(c *checker) {
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		var low, high float64
		var shortest, longest time.Duration
		var each []any
		n := 0
		for _, s := range c.setsIn(i + 1) {
			if !s.fast() || !c.followsRest(s) || s.exercise.Tries == sessions.Practice {
				continue
			}
			percent, ok := Phosphocreatine(s.before)
			if !ok {
				each = append(each, nil)
				continue
			}
			each = append(each, round1(percent))
			if n == 0 || percent < low {
				low, shortest = percent, s.before
			}
			if n == 0 || percent > high {
				high, longest = percent, s.before
			}
			n++
		}
		if n == 0 {
			continue
		}
		what := fmt.Sprintf("about %.0f %% (%s after the work before)", low, span(shortest))
		if longest != shortest {
			what += fmt.Sprintf(" to %.0f %% (%s)", high, span(longest))
		}
		c.add(Note, b.Marks.At("rest"), figures{"phosphocreatine_pct": each},
			"%s of the phosphocreatine would be back at the start of the power sets of %s after an all-out sprint of 30 s; an orientation, on cycling (Bogdanis et al. 1995)",
			what, quote(b.Title))
	}
}

// followsRest reports whether a set follows a rest after work that tires. What
// follows a change of exercise within a round is no new effort, and what
// follows the warm-up no second one.
func (c *checker) followsRest(s set) bool {
	if !s.rested || len(c.setsIn(s.Block)) == 0 {
		return false
	}
	first := c.setsIn(s.Block)[0]
	return s.First != first.First || s.Block > 1 && !c.prepares[s.Block-2]
}

// round1 rounds to one decimal.
func round1(v float64) float64 { return float64(int(v*10+0.5)) / 10 }

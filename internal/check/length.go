package check

import (
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// length holds the session's length, at the player's own pace, against the
// time there is.
func length(c *checker) {
	if c.o.Within == 0 {
		return
	}
	total, pace := c.p.Total, c.o.Player.Pace
	if pace > 0 && pace != 1 {
		for _, s := range c.p.Steps {
			if s.Kind == plan.Work && s.Reps > 0 {
				total += time.Duration((pace - 1) * float64(s.Length))
			}
		}
	}
	if total <= c.o.Within {
		return
	}
	at := c.s.Marks.At("blocks")
	f := figures{"total_s": total.Seconds(), "within_s": c.o.Within.Seconds()}
	if c.p.Total <= c.o.Within {
		c.add(Warning, at, f, "the session is %s long as written and %s at your pace of %g, %s over the %s there are",
			units.Clock(c.p.Total), units.Clock(total), pace, span((total - c.o.Within).Round(time.Second)), span(c.o.Within))
		return
	}
	c.add(Warning, at, f, "the session is %s long, %s over the %s there are", units.Clock(total),
		span((total - c.o.Within).Round(time.Second)), span(c.o.Within))
}

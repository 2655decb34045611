package check

import (
	"math"
	"slices"
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

// spacing looks at the time since the player's last session with contacts,
// and how many there were in seven days.
func spacing(c *checker) {
	if c.p.Contacts == 0 {
		return
	}
	const week = 7 * 24 * time.Hour
	var last time.Time
	days := 1 // this one
	for _, t := range c.o.Jumps {
		if t.After(c.o.Now) {
			continue
		}
		if t.After(last) {
			last = t
		}
		if c.o.Now.Sub(t) < week {
			days++
		}
	}
	if last.IsZero() {
		return
	}
	at := c.s.Marks.At("blocks")
	r := c.limit("jump_interval")
	since := c.o.Now.Sub(last)
	f := figures{"since_s": math.Round(since.Seconds()), "low_s": r.Low, "high_s": r.High}
	severity := Note
	switch {
	case since < units.Seconds(r.Low):
		severity = Warning
		fallthrough
	case since < units.Seconds(r.High):
		c.add(severity, at, f, "the last session with foot contacts ended %s ago; the range is %s, up on %s",
			units.Hours(since), c.cite("jump_interval"), c.window(last))
	}
	if most := c.limit("jump_days"); float64(days) > most.High {
		c.add(Warning, at, figures{"sessions": days, "high": most.High},
			"this would be session %d with foot contacts in seven days; the range is %s a week", days, c.cite("jump_days"))
	}
}

// window writes when both ends of the interval after the last session are up.
func (c *checker) window(last time.Time) string {
	const layout = "Mon 2 Jan 15:04"
	r := c.limit("jump_interval")
	ends := []string{last.Add(units.Seconds(r.Low)).Format(layout), last.Add(units.Seconds(r.High)).Format(layout)}
	return joinAnd(slices.Compact(ends))
}

// joinAnd joins one or two words.
func joinAnd(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	return words[0] + " and " + words[1]
}

package check

import (
	"math"
	"time"

	"coldfloor/internal/units"
)

// Jumped is an earlier session of the player with jumps in it.
type Jumped struct {
	End      time.Time // one dated ahead of now counts as if it had just ended
	Contacts int       // foot contacts; a least number if Unknown
	Unknown  bool      // how many jumps is not known, in whole or in part
}

// Spacing is the name of the rule on the time since the last jumps.
const Spacing = "spacing"

// spacing looks at the time since the player's last session with jumps, and on
// how many days of seven there were some, this one counted.
func spacing(c *checker) {
	last, ok := c.lastJumped()
	if !ok || !c.hasJumps() {
		return
	}
	at := c.s.Marks.At("blocks")
	r := c.limit("jump_interval")
	since := max(c.o.Now.Sub(last.End), 0)
	f := figures{"since_s": math.Round(since.Seconds()), "low_s": r.Low, "high_s": r.High}
	severity := Note
	if since < units.Seconds(r.Low) {
		severity = Warning
	}
	if since < units.Seconds(r.High) {
		c.say(severity, at, f, c.w.Ended(units.Hours(since), !last.Unknown, c.cite("jump_interval"), c.window(last.End)))
	}
	if days, most := c.jumpDays(), c.limit("jump_days"); float64(days) > most.High {
		c.say(Warning, at, figures{"days": days, "high": most.High}, c.w.JumpDay(days, c.span("jump_days"), c.source("jump_days")))
	}
}

// lastJumped returns the session with jumps that ended last.
func (c *checker) lastJumped() (last Jumped, ok bool) {
	for _, j := range c.o.Jumps {
		if !ok || j.End.After(last.End) {
			last, ok = j, true
		}
	}
	return last, ok
}

// jumpDays returns on how many of seven calendar days there were jumps, today
// counted.
func (c *checker) jumpDays() int {
	today := dayOf(c.o.Now)
	days := map[time.Time]bool{today: true}
	for _, j := range c.o.Jumps {
		if d := dayOf(j.End.In(c.o.Now.Location())); !d.After(today) && d.After(today.AddDate(0, 0, -7)) {
			days[d] = true
		}
	}
	return len(days)
}

// dayOf returns the calendar day of a moment, as midnight in UTC.
func dayOf(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// moment writes a moment, by the clock that the check is made at.
func (c *checker) moment(t time.Time) string {
	t = t.In(c.o.Now.Location())
	return c.o.Language.Date(units.DateOf(t)) + " " + t.Format("15:04")
}

// window says from when to when the interval after the last session ends.
func (c *checker) window(last time.Time) string {
	r := c.limit("jump_interval")
	low, high := units.Seconds(r.Low), units.Seconds(r.High)
	text := c.w.JumpAgain(c.moment(last.Add(low)), units.Hours(low))
	if low == high {
		return text
	}
	return text + c.w.JumpUntil(c.moment(last.Add(high)), units.Hours(high))
}

package check

import (
	"time"

	"coldfloor/internal/units"

	"coldfloor/sessions"
)

// warmUp looks for enough warm-up before the first jump, sprint or other fast
// work.
func warmUp(c *checker) {
	var before time.Duration // of warm-up so far, rests after a block left out
	for i, s := range c.sets {
		warming := s.block.Part == sessions.WarmUp
		if first := s.fast() || s.jump && !s.prepares; first && (!warming || s.jump && !light(s.block, s.exercise)) {
			c.warmedUp(s, before)
			return
		}
		if !warming {
			continue
		}
		if i > 0 && c.sets[i-1].Block == s.Block {
			before += s.before
		}
		before += s.end - s.start
	}
}

// warmedUp holds the warm-up before the first fast set against its range.
func (c *checker) warmedUp(s set, before time.Duration) {
	r := c.limit("warm_up")
	f := figures{"warm_up_s": before.Seconds(), "low_s": r.Low, "high_s": r.High}
	e, what := s.exercise, "fast work"
	if s.jump {
		what = "jump"
	}
	at := e.Marks.At("name")
	switch {
	case before == 0:
		c.say(Warning, at, f, c.w.NoWarmUp(c.name(e.Name), c.cite("warm_up")))
	case before < units.Seconds(r.Low):
		c.say(Warning, at, f, c.w.ShortWarmUp(span(before), c.name(e.Name), s.jump, span(units.Seconds(r.Low)), c.source("warm_up")))
	case before < units.Seconds(r.High):
		c.add(Note, at, f, "%s of warm-up comes before the first %s, %s; practice is %s (%s)",
			span(before), what, quote(e.Name), span(units.Seconds(r.High)), c.source("warm_up"))
	}
}

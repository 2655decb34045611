package check

import (
	"time"

	"coldfloor/internal/units"

	"coldfloor/sessions"
)

// restBefore holds the rest before a block against that between rounds, if the
// block begins with fast work, or with strength after strength or
// conditioning.
func (c *checker) restBefore(number int, b *sessions.Block) {
	sets := c.setsIn(number)
	if number == 1 || len(sets) == 0 {
		return
	}
	first, before := sets[0], c.setsIn(number-1)
	if len(before) == 0 || before[0].prepares {
		return
	}
	last := before[len(before)-1]
	var key string
	switch {
	case first.kind == power && last.kind > control:
		key = "round_rest"
	case first.kind == strength && (last.kind == strength || last.kind == conditioning):
		key = "assistance_rest"
	default:
		return
	}
	if first.before >= units.Seconds(c.limit(key).Low) {
		return
	}
	at := last.block.Marks.At("rest_after")
	if _, given := last.block.Marks["rest_after"]; !given {
		at = last.block.Marks.At("rest")
	}
	c.say(Warning, at, figures{"rest_s": first.before.Seconds(), "low_s": c.limit(key).Low},
		c.w.BetweenBlocks(c.pause(first.before), c.name(last.block.Title), c.name(b.Title), span(units.Seconds(c.limit(key).Low)), c.source(key)))
}

// pause writes a pause, or that there is none.
func (c *checker) pause(d time.Duration) string {
	if d == 0 {
		return c.w.NoRest
	}
	return c.w.Rest(span(d))
}

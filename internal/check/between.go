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
	c.add(Warning, at, figures{"rest_s": first.before.Seconds(), "low_s": c.limit(key).Low},
		"%s from %s to %s, less than the %s between rounds (%s); rest_after of the block before sets it",
		pauseText(first.before), quote(last.block.Title), quote(b.Title), span(units.Seconds(c.limit(key).Low)), c.source(key))
}

// pauseText writes a pause, or that there is none.
func pauseText(d time.Duration) string {
	if d == 0 {
		return "no rest"
	}
	return span(d) + " of rest"
}

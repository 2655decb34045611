package check

import (
	"time"

	"coldfloor/internal/units"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// rest holds the work and rest of each block against the range for what its
// exercises train, and the rest before each block.
func rest(c *checker) {
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if c.prepares[i] {
			continue
		}
		c.restBefore(i+1, b)
		switch most, inferred := c.mostOf(i+1, b); most {
		case power:
			c.powerRest(i+1, b)
		case strength:
			c.strengthRest(i+1, b, inferred)
		case size:
			c.gapRange(i+1, b, "size_rest", "muscle size")
		case endurance:
			c.gapRange(i+1, b, "endurance_rest", "muscular endurance")
		case conditioning:
			c.conditioningRest(i+1, b)
		}
	}
}

// mostOf returns the most demanding kind among a block's sets, and whether it
// is inferred: the block does not say so itself.
func (c *checker) mostOf(number int, b *sessions.Block) (most quality, inferred bool) {
	for _, s := range c.setsIn(number) {
		most = max(most, s.kind)
	}
	said, _ := trains(b)
	return most, said != most
}

// powerRest holds a block done at maximal power against the handbook's ratio
// and against practice. It warns only if the block is below both.
func (c *checker) powerRest(number int, b *sessions.Block) {
	r := c.p.Ratio(number)
	if len(c.setsIn(number)) == 1 {
		return // one set: there is no rest to judge
	}
	key, jumps := "power_rest_ratio", false
	for _, s := range c.setsIn(number) {
		if s.kind == power && s.jump {
			key, jumps = "jump_rest_ratio", true
		}
	}
	resets := c.hasResets(number, c.limit(key).Low)
	least := c.pauseBetweenRounds(b)
	passes := least >= units.Seconds(c.limit("round_rest").Low)
	if r.Value() >= c.limit(key).Low || resets && passes {
		return // more rest than the range costs time, and harms nobody; resets within the reps are rest too
	}
	f := figures{"work_s": r.Work.Seconds(), "rest_s": r.Between.Seconds(), "ratio": r.Value(),
		"low": c.limit(key).Low, "high": c.limit(key).High, "round_rest_s": least.Seconds()}
	handbook := c.w.PowerRest(c.name(b.Title), ratioText(r), jumps, c.limit(key).Low, c.limit(key).High, c.source(key))
	if passes || resets && least >= units.Seconds(c.limit("round_rest").Low)/2 {
		c.add(Note, b.Marks.At("rest"), f, "%s, practice is about %s between rounds (%s), here %s",
			handbook, span(units.Seconds(c.limit("round_rest").High)), c.source("round_rest"), span(least))
		return
	}
	c.say(Warning, b.Marks.At("rest"), f, c.w.PowerRestHere(handbook, c.span("round_rest"), c.source("round_rest"), span(least)))
}

// hasResets reports whether the fast efforts of a block are written with their
// reset within the rep, so that its ratio says less than the rest there is. The
// efforts beside them that are not must have low times their work before they
// come round again.
func (c *checker) hasResets(number int, low float64) bool {
	sets, n := c.setsIn(number), len(c.s.Blocks[number-1].Exercises)
	some := false
	for i, s := range sets {
		switch {
		case s.kind != power:
		case !timed(s.exercise) && s.exercise.Rep >= slowRep:
			some = true
		case i+n < len(sets) && float64(sets[i+n].start-s.end) < low*float64(s.Work):
			return false
		}
	}
	return some
}

// ratioText writes a ratio, that of no rest as 1:0.
func ratioText(r plan.Ratio) string {
	if r.Between == 0 {
		return "1:0"
	}
	return r.String()
}

// pauseBetweenRounds returns the rest after a round, or in a block of one
// round the shortest between two of its exercises, which it must have.
func (c *checker) pauseBetweenRounds(b *sessions.Block) time.Duration {
	if b.Rounds > 1 {
		return b.Rest
	}
	least := time.Duration(-1)
	for _, e := range b.Exercises[:len(b.Exercises)-1] {
		gap := b.Change
		if e.Rest != nil {
			gap = *e.Rest
		}
		if least < 0 || gap < least {
			least = gap
		}
	}
	return least
}

// strengthRest holds the pause before each exercise comes round again against
// the ranges for strength. A block that does not say that it trains strength
// gets no more than a note, unless there is no pause at all.
func (c *checker) strengthRest(number int, b *sessions.Block, inferred bool) {
	gap, again := c.leastGap(number)
	full, assistance := c.limit("strength_rest"), c.limit("assistance_rest")
	if !again || gap >= units.Seconds(full.Low) {
		return
	}
	severity := Note
	if gap < units.Seconds(assistance.Low) && (!inferred || gap < noPause) {
		severity = Warning
	}
	c.say(severity, b.Marks.At("rest"), figures{"gap_s": gap.Seconds(), "low_s": full.Low, "high_s": full.High, "assistance_low_s": assistance.Low},
		c.w.StrengthRest(c.pause(gap), c.name(b.Title), c.cite("strength_rest"), c.cite("assistance_rest"), span(units.Seconds(c.limit("round_rest").High))))
}

// noPause is what two sets of one exercise run together at. Our own, no
// source.
const noPause = 10 * time.Second

// gapRange notes a pause that is outside the range of a goal: from one set of
// the exercise to the next, or of several exercises that work other muscles
// meanwhile, between the rounds.
func (c *checker) gapRange(number int, b *sessions.Block, key, goal string) {
	gap, again := c.leastGap(number)
	what := "from one set of an exercise to its next"
	if len(b.Exercises) > 1 {
		gap, what = b.Rest, "between the rounds"
	}
	if !again || c.limit(key).Within(gap.Seconds()) {
		return
	}
	c.add(Note, b.Marks.At("rest"), figures{"gap_s": gap.Seconds(), "low_s": c.limit(key).Low, "high_s": c.limit(key).High},
		"%s %s in %s; the range for %s is %s", span(gap), what, quote(b.Title), goal, c.cite(key))
}

// conditioningRest notes a ratio outside the range for the length of the
// block's efforts. How hard they are no file says, so it never warns.
func (c *checker) conditioningRest(number int, b *sessions.Block) {
	if len(c.setsIn(number)) == 1 {
		return
	}
	var longest time.Duration
	for _, s := range c.setsIn(number) {
		longest = max(longest, s.longest)
	}
	key := "long_rest_ratio"
	switch {
	case longest <= 30*time.Second:
		key = "short_rest_ratio"
	case longest <= 3*time.Minute:
		key = "medium_rest_ratio"
	}
	r := c.p.Ratio(number)
	if c.limit(key).Within(r.Value()) {
		return
	}
	c.add(Note, b.Marks.At("rest"), figures{"work_s": r.Work.Seconds(), "rest_s": r.Between.Seconds(), "ratio": r.Value(), "longest_s": longest.Seconds(),
		"low": c.limit(key).Low, "high": c.limit(key).High},
		"work to rest in %s is %s with efforts up to %s; the handbook's range for hard efforts of that length is %s (%s), easier ones need less",
		quote(b.Title), ratioText(r), span(longest), c.ratio(key), c.source(key))
}

// leastGap returns the shortest time from the end of one set of an exercise to
// the start of its next, and false if none comes round again.
func (c *checker) leastGap(number int) (least time.Duration, again bool) {
	sets := c.setsIn(number)
	n := len(c.s.Blocks[number-1].Exercises)
	for i := n; i < len(sets); i++ {
		if gap := sets[i].start - sets[i-n].end; !again || gap < least {
			least, again = gap, true
		}
	}
	return least, again
}

package check

import (
	"fmt"
	"math"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// rest holds the work and rest of each main block against the range for what
// the block trains.
func rest(c *checker) {
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if b.Part != sessions.Main {
			continue
		}
		switch trains(b) {
		case power:
			c.powerRest(i+1, b)
		case strength:
			c.strengthRest(i+1, b)
		case size:
			c.gapRange(i+1, b, "size_rest", "muscle size")
		case endurance:
			c.gapRange(i+1, b, "endurance_rest", "muscular endurance")
		case conditioning:
			c.conditioningRest(i+1, b)
		}
	}
}

// powerRest holds a block that trains maximal power against the handbook's
// ratio and against practice. It warns only where the block is below both.
func (c *checker) powerRest(number int, b *sessions.Block) {
	work, pause := c.workRest(number)
	if pause == 0 && b.Rounds*len(b.Exercises) == 1 {
		return // one set: there is no rest to judge
	}
	key, name := "power_rest_ratio", "maximal power"
	for _, s := range c.setsIn(number) {
		if s.traits.has(jump) {
			key, name = "jump_rest_ratio", "plyometric work"
		}
	}
	ratio := ratioOf(work, pause)
	if ratio >= c.limit(key).Low {
		return // more rest than the range costs time, and harms nobody
	}
	least := c.pauseBetweenRounds(b)
	f := figures{"work_s": work.Seconds(), "rest_s": pause.Seconds(), "ratio": ratio,
		"low": c.limit(key).Low, "high": c.limit(key).High, "round_rest_s": least.Seconds()}
	handbook := fmt.Sprintf("work to rest in %s is 1:%.1f; the handbook's range for %s is %s (%s)",
		quote(b.Title), ratio, name, c.ratio(key), c.source(key))
	if least >= units.Seconds(c.limit("round_rest").Low) {
		c.add(Note, b.Marks.At("rest"), f, "%s, practice is about %s between rounds (%s), here %s",
			handbook, span(units.Seconds(c.limit("round_rest").High)), c.source("round_rest"), span(least))
		return
	}
	c.add(Warning, b.Marks.At("rest"), f, "%s, and practice is %s between rounds (%s), here %s",
		handbook, c.span("round_rest"), c.source("round_rest"), span(least))
}

// pauseBetweenRounds returns the rest after a round, or in a block of one
// round the shortest between two of its exercises.
func (c *checker) pauseBetweenRounds(b *sessions.Block) time.Duration {
	if b.Rounds > 1 {
		return b.Rest
	}
	least := time.Duration(math.MaxInt64)
	for _, e := range b.Exercises[:len(b.Exercises)-1] {
		if e.Rest != nil {
			least = min(least, *e.Rest)
		} else {
			least = min(least, b.Change)
		}
	}
	return least
}

// strengthRest holds the pause before each exercise comes round again against
// the ranges for strength.
func (c *checker) strengthRest(number int, b *sessions.Block) {
	gap := c.leastGap(number)
	full, assistance := c.limit("strength_rest"), c.limit("assistance_rest")
	if gap == 0 || gap >= units.Seconds(full.Low) {
		return
	}
	severity := Note
	if gap < units.Seconds(assistance.Low) {
		severity = Warning
	}
	c.add(severity, b.Marks.At("rest"), figures{"gap_s": gap.Seconds(), "low_s": full.Low, "high_s": full.High, "assistance_low_s": assistance.Low},
		"%s from one set of an exercise to its next in %s; the range for strength is %s, for assistance exercises %s, practice is about %s",
		span(gap), quote(b.Title), c.cite("strength_rest"), c.cite("assistance_rest"), span(units.Seconds(c.limit("round_rest").High)))
}

// gapRange notes a pause between sets that is outside the range of a goal.
func (c *checker) gapRange(number int, b *sessions.Block, key, goal string) {
	gap := c.leastGap(number)
	if gap == 0 || c.limit(key).Within(gap.Seconds()) {
		return
	}
	c.add(Note, b.Marks.At("rest"), figures{"gap_s": gap.Seconds(), "low_s": c.limit(key).Low, "high_s": c.limit(key).High},
		"%s from one set of an exercise to its next in %s; the range for %s is %s", span(gap), quote(b.Title), goal, c.cite(key))
}

// conditioningRest notes a ratio outside the range for the length of the
// block's efforts. How hard they are no file says, so it never warns.
func (c *checker) conditioningRest(number int, b *sessions.Block) {
	work, pause := c.workRest(number)
	var longest time.Duration
	for _, s := range c.setsIn(number) {
		longest = max(longest, s.longest)
	}
	if b.Rounds*len(b.Exercises) == 1 {
		return
	}
	key := "long_rest_ratio"
	switch {
	case longest <= 30*time.Second:
		key = "short_rest_ratio"
	case longest <= 3*time.Minute:
		key = "medium_rest_ratio"
	}
	ratio := ratioOf(work, pause)
	if c.limit(key).Within(ratio) {
		return
	}
	c.add(Note, b.Marks.At("rest"), figures{"work_s": work.Seconds(), "rest_s": pause.Seconds(), "ratio": ratio, "longest_s": longest.Seconds(),
		"low": c.limit(key).Low, "high": c.limit(key).High},
		"work to rest in %s is 1:%.1f with efforts up to %s; the handbook's range for hard efforts of that length is %s (%s), easier ones need less",
		quote(b.Title), ratio, span(longest), c.ratio(key), c.source(key))
}

// workRest returns the work of a block and the time between, from its first
// work step to its last.
func (c *checker) workRest(number int) (work, pause time.Duration) {
	sets := c.setsIn(number)
	if len(sets) == 0 {
		return 0, 0
	}
	for _, s := range c.p.Steps[sets[0].First : sets[len(sets)-1].Last+1] {
		if s.Kind == plan.Work {
			work += s.Length
		} else {
			pause += s.Length
		}
	}
	return work, pause
}

// leastGap returns the shortest time from the end of one set of an exercise to
// the start of its next, 0 where none comes round again.
func (c *checker) leastGap(number int) time.Duration {
	sets := c.setsIn(number)
	n := len(c.s.Blocks[number-1].Exercises)
	var least time.Duration
	for i := n; i < len(sets); i++ {
		if gap := sets[i].start - sets[i-n].end; least == 0 || gap < least {
			least = gap
		}
	}
	return least
}

// ratioOf returns the rest to one of work, to a tenth: what is shown is what
// is held against the limit.
func ratioOf(work, rest time.Duration) float64 {
	if work == 0 {
		return 0
	}
	return math.Round(10*float64(rest)/float64(work)) / 10
}

package check

import (
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// warmUp looks for enough warm-up before the first jump of the main part.
func warmUp(c *checker) {
	var before time.Duration // of warm-up so far
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if b.Part == sessions.WarmUp {
			before += c.p.Blocks[i].Total
			continue
		}
		e := firstJump(b)
		if e == nil {
			continue
		}
		r := c.limit("warm_up")
		f := figures{"warm_up_s": before.Seconds(), "low_s": r.Low, "high_s": r.High}
		at := e.Marks.At("name")
		switch {
		case before == 0:
			c.add(Warning, at, f, "%s comes with no warm-up before it; put a block with part: warm-up first, %s", quote(e.Name), c.cite("warm_up"))
		case before < units.Seconds(r.Low):
			c.add(Warning, at, f, "%s of warm-up come before the first jump, %s; the least is %s (%s)",
				span(before), quote(e.Name), span(units.Seconds(r.Low)), c.source("warm_up"))
		case before < units.Seconds(r.High):
			c.add(Note, at, f, "%s of warm-up come before the first jump, %s; practice is %s (%s)",
				span(before), quote(e.Name), span(units.Seconds(r.High)), c.source("warm_up"))
		}
		return
	}
}

// firstJump returns the first exercise of a block that leaves the floor.
func firstJump(b *sessions.Block) *sessions.Exercise {
	for i := range b.Exercises {
		if traitsOf(b, &b.Exercises[i]).has(jump) {
			return &b.Exercises[i]
		}
	}
	return nil
}

// order looks for jumps before slow strength, and conditioning last.
func order(c *checker) {
	var slowSet *sessions.Exercise  // the first slow strength exercise so far
	var conditioned *sessions.Block // the first block of conditioning so far
	var complained, late bool       // once each is enough
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if b.Part != sessions.Main {
			continue
		}
		if e := firstJump(b); e != nil && slowSet != nil && !complained {
			complained = true
			c.add(Warning, e.Marks.At("name"), nil, "%s comes after the slow strength work %s; jumps come first, while the legs are fresh (common practice, no source)",
				quote(e.Name), quote(slowSet.Name))
		}
		kind := trains(b)
		if conditioned != nil && kind > conditioning && !late {
			late = true
			c.add(Warning, b.Marks.At("title"), nil, "%s comes after the conditioning of %s; conditioning comes last (common practice, no source)",
				quote(b.Title), quote(conditioned.Title))
		}
		if slowSet == nil {
			slowSet = firstSlow(b)
			c.contrast(b, slowSet)
		}
		if kind == conditioning && conditioned == nil {
			conditioned = b
		}
	}
}

// firstSlow returns the first exercise of slow strength of a block.
func firstSlow(b *sessions.Block) *sessions.Exercise {
	for i := range b.Exercises {
		if traitsOf(b, &b.Exercises[i]).has(slow) {
			return &b.Exercises[i]
		}
	}
	return nil
}

// contrast notes a round that begins slow and jumps after.
func (c *checker) contrast(b *sessions.Block, first *sessions.Exercise) {
	after := false
	for i := range b.Exercises {
		e := &b.Exercises[i]
		if after && traitsOf(b, e).has(jump) {
			c.add(Note, e.Marks.At("name"), nil, "%s follows the slow strength work %s within the round; that is right where contrast is meant, and the other way round where it is not (common practice, no source)",
				quote(e.Name), quote(first.Name))
			return
		}
		after = after || e == first
	}
}

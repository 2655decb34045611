package check

import "coldfloor/sessions"

// order looks for fast work before slow strength, and conditioning last.
func order(c *checker) {
	var slow *sessions.Exercise     // the first slow strength exercise so far
	var conditioned *sessions.Block // the first block of conditioning so far
	var complained, late bool       // once each is enough
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if c.prepares[i] {
			continue
		}
		fast, lift, tiring := c.firstOf(b)
		if fast != nil && slow != nil && !complained {
			complained = true
			c.say(Warning, fast.Marks.At("name"), nil, c.w.FastAfterSlow(c.name(fast.Name), c.name(slow.Name)))
		}
		if conditioned != nil && (fast != nil || lift != nil) && !late {
			late = true
			c.say(Warning, b.Marks.At("title"), nil, c.w.AfterConditioning(c.name(b.Title), c.name(conditioned.Title)))
		}
		if slow == nil && lift != nil {
			slow = lift
			c.contrast(b, lift)
		}
		if tiring && conditioned == nil {
			conditioned = b
		}
	}
}

// firstOf returns the first exercise of a block that is fast or a jump, the
// first that is slow strength, and whether the block is conditioning.
func (c *checker) firstOf(b *sessions.Block) (fast, lift *sessions.Exercise, tiring bool) {
	said, _ := trains(b)
	tiring = said == conditioning
	for i := range b.Exercises {
		e := &b.Exercises[i]
		switch kind := c.exercise[e].kind; {
		case (kind == power || c.exercise[e].jump && kind != conditioning && kind != endurance) && fast == nil:
			fast = e
		case (kind == strength || kind == size) && lift == nil:
			lift = e
		case kind == conditioning:
			tiring = true
		}
	}
	return fast, lift, tiring
}

// contrast notes a round that begins slow and jumps after.
func (c *checker) contrast(b *sessions.Block, first *sessions.Exercise) {
	after := false
	for i := range b.Exercises {
		e := &b.Exercises[i]
		if after && c.exercise[e].jump {
			c.add(Note, e.Marks.At("name"), nil, "%s follows the slow strength work %s within the round; that is right if contrast is meant, and the other way round if it is not (common practice, no source)",
				quote(e.Name), quote(first.Name))
			return
		}
		after = after || e == first
	}
}

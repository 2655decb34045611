package compose

import (
	"time"

	"coldfloor/sessions"
)

// size is how long something is, the rest after it counted, and how many foot
// contacts it has.
type size struct {
	length   time.Duration
	contacts int
}

// part is a part of a session, and what of its shape it hangs on.
type part struct {
	of Quality
	shape
}

// sizer returns the sizes of sessions, each part of which it builds once.
type sizer struct {
	Answers
	known map[part]size
}

// of returns the size of the session of a shape.
func (z sizer) of(sh shape, train []Quality) size {
	total := size{length: sessions.DefaultLeadIn}
	add := func(p part, build func() []sessions.Block) {
		if _, ok := z.known[p]; !ok {
			z.known[p] = sizeOf(build())
		}
		total.length += z.known[p].length
		total.contacts += z.known[p].contacts
	}
	add(part{warmUp, shape{warmUp: sh.warmUp}}, func() []sessions.Block { return []sessions.Block{z.warmUp(sh.warmUp)} })
	for _, q := range train {
		asked := shape{rounds: sh.rounds, each: sh.each, second: sh.second, long: sh.long}
		add(part{q, asked}, func() []sessions.Block { return z.blocks(q, sh) })
	}
	if sh.trunk > 0 {
		add(part{trunk, shape{trunk: sh.trunk}}, func() []sessions.Block { return []sessions.Block{z.trunk(sh.trunk)} })
	}
	add(part{coolDown, shape{coolDown: sh.coolDown}}, func() []sessions.Block { return []sessions.Block{z.coolDown(sh.coolDown)} })
	return total
}

// sizeOf returns the size of some blocks.
func sizeOf(blocks []sessions.Block) (total size) {
	for i := range blocks {
		b := &blocks[i]
		total.length += lengthOf(*b) + b.RestAfter
		for j := range b.Exercises {
			e := &b.Exercises[j]
			total.contacts += b.Rounds * e.Contacts * (e.Reps + 2*e.RepsPerSide)
		}
	}
	return total
}

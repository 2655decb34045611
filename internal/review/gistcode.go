package review

import (
	"time"

	"coldfloor/internal/compact"
	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
)

// gistCoder codes gists.
type gistCoder struct {
	rests     room[restsOf]
	off       room[offBy]
	exercises room[setsOf]
}

// Again lets what was read be written over.
func (x *gistCoder) Again() {
	x.rests.again()
	x.off.again()
	x.exercises.again()
}

// room is memory that lists are read into.
type room[T any] struct{ all, left []T }

// again makes all of it free.
func (r *room[T]) again() {
	clear(r.all[:len(r.all)-len(r.left)])
	r.left = r.all
}

// take returns room for n.
func (r *room[T]) take(n int) []T {
	if n > len(r.left) {
		r.all = make([]T, max(n, 2*len(r.all), 64))
		r.left = r.all
	}
	list := r.left[:n:n]
	r.left = r.left[n:]
	return list
}

// list codes a list.
func list[T any](c *journal.RunCoder, p *[]T, room *room[T], code func(*T)) {
	n := len(*p)
	c.Int(&n)
	if c.Reading {
		if n < 0 || n > len(c.Buf) { // each takes a byte at least
			c.Err, c.Buf = compact.ErrShort, nil
			return
		}
		*p = room.take(n)
	}
	for i := range *p {
		code(&(*p)[i])
	}
}

// Code codes a gist, whose run is lean when it is read.
func (x *gistCoder) Code(c *journal.RunCoder, g *gist) {
	run := g.Run
	if !c.Reading {
		run = run.Slim()
	}
	if c.Run(&run); c.Reading {
		g.Run = run
	}
	if c.Err != nil || run.Fate() != journal.Counted {
		return
	}
	codeShare(c, &g.rounds)
	c.Bool(&g.known)
	codeShare(c, &g.sets)
	codeShare(c, &g.reps)
	c.Int(&g.notBegun)
	start := dayOf(run.Start)
	list(c, &g.rests, &x.rests, func(r *restsOf) { x.codeRests(c, r, start) })
	list(c, &g.exercises, &x.exercises, func(s *setsOf) { s.code(c) })
	compact.List(&c.Coder, &g.results, func(r *measured.Result) { codeResult(c, r) })
}

func codeShare(c *journal.RunCoder, s *Share) {
	c.Int(&s.Done)
	c.Int(&s.Prescribed)
}

// codeRests codes the rests of a date, which is most often that of the start.
func (x *gistCoder) codeRests(c *journal.RunCoder, r *restsOf, start day) {
	after := int(r.at - start)
	c.Int(&after)
	r.at = start + day(after)
	c.Int(&r.count)
	c.Int(&r.kept)
	c.Int(&r.early)
	c.Int(&r.overrun)
	codeLength(c, &r.prescribed)
	codeLength(c, &r.taken)
	list(c, &r.off, &x.off, func(o *offBy) {
		step, n := int(o.step), int(o.n)
		c.Int(&step)
		c.Int(&n)
		*o = offBy{int32(step), int32(n)}
	})
}

func codeLength(c *journal.RunCoder, p *time.Duration) {
	v := int(*p)
	c.Int(&v)
	*p = time.Duration(v)
}

func (x *setsOf) code(c *journal.RunCoder) {
	c.Word(&x.name)
	c.Int(&x.sets)
	c.Int(&x.partial)
	c.Int(&x.skipped)
	c.Int(&x.easier)
	c.Word(&x.variant)
}

func codeResult(c *journal.RunCoder, r *measured.Result) {
	c.Word(&r.Name)
	c.Word(&r.Measure)
	c.Word(&r.Way)
	c.Word(&r.Side)
	c.Time(&r.At)
	compact.Optional(&c.Coder, &r.Value, c.Float)
	c.Bool(&r.Practice)
}

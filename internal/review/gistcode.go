package review

import (
	"time"

	"coldfloor/internal/compact"
	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
)

// code codes a gist, whose run is lean when it is read.
func (g *gist) code(c *journal.RunCoder) {
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
	compact.List(&c.Coder, &g.rests, func(r *restsOf) { r.code(c, start) })
	compact.List(&c.Coder, &g.exercises, func(x *setsOf) { x.code(c) })
	compact.List(&c.Coder, &g.results, func(r *measured.Result) { codeResult(c, r) })
}

func codeShare(c *journal.RunCoder, s *Share) {
	c.Int(&s.Done)
	c.Int(&s.Prescribed)
}

// code codes the rests of a date, which is most often that of the start.
func (r *restsOf) code(c *journal.RunCoder, start day) {
	after := int(r.at - start)
	c.Int(&after)
	r.at = start + day(after)
	c.Int(&r.count)
	c.Int(&r.kept)
	c.Int(&r.early)
	c.Int(&r.overrun)
	codeLength(c, &r.prescribed)
	codeLength(c, &r.taken)
	compact.List(&c.Coder, &r.off, func(o *offBy) {
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

package runs

import (
	"coldfloor/internal/compact"
	"coldfloor/internal/journal"
)

// codec writes journal lines in few bytes, or reads them back. One description
// of a line serves both ways, so that the two cannot differ. Everything of a
// line is kept but the session's text.
type codec struct {
	compact.Coder

	// Used again for every run that is decoded: journal.Build keeps none of it.
	entries []journal.Entry
	sets    []journal.Set
	rests   []journal.Rest
}

// reused codes what may be missing, into one more of list if it is read.
func reused[T any](c *compact.Coder, p **T, list *[]T, code func(*T)) {
	there := *p != nil
	if c.Bool(&there); !there {
		return
	}
	if c.Reading {
		var none T
		*list = append(*list, none) // if it moves, those before stay as they are
		*p = &(*list)[len(*list)-1]
	}
	code(*p)
}

var errShort = compact.ErrShort

// line codes everything of l but its run, which its block names.
func (c *codec) line(l *journal.Line) {
	c.Int(&l.N)
	c.Time(&l.At)
	c.Float(&l.Clock)
	c.String((*string)(&l.Event))
	l.V = journal.Version
	compact.Optional(&c.Coder, &l.Started, c.started)
	reused(&c.Coder, &l.Set, &c.sets, c.set)
	reused(&c.Coder, &l.Rest, &c.rests, c.rest)
	compact.Optional(&c.Coder, &l.Pause, func(p *journal.Pause) { c.String(&p.Cause) })
	compact.Optional(&c.Coder, &l.Resume, func(r *journal.Resume) { c.Bool(&r.Restart); c.Int(&r.Step) })
	compact.Optional(&c.Coder, &l.Move, func(m *journal.Move) { c.String(&m.Cause); c.String(&m.Kind); c.place(&m.Place) })
	compact.Optional(&c.Coder, &l.Extend, func(e *journal.Extend) { c.String(&e.Kind); c.Float(&e.ByS); c.place(&e.Place) })
	compact.Optional(&c.Coder, &l.Variant, func(v *journal.Variant) { c.place(&v.Place); c.String(&v.Name); c.Bool(&v.Easier) })
	compact.Optional(&c.Coder, &l.Finish, func(f *journal.Finish) { c.String(&f.Outcome); c.Float(&f.ElapsedS) })
	compact.Optional(&c.Coder, &l.Measure, c.measure)
	compact.Optional(&c.Coder, &l.Rating, c.rating)
	compact.Optional(&c.Coder, &l.Correct, func(p *journal.Correct) {
		compact.Optional(&c.Coder, &p.At, c.Time)
		compact.Optional(&c.Coder, &p.LengthS, c.Float)
	})
}

func (c *codec) started(s *journal.Started) {
	c.String(&s.Title)
	c.String(&s.Source)
	c.String(&s.Player)
	c.Float(&s.TotalS)
	compact.List(&c.Coder, &s.Blocks, func(b *journal.PlannedBlock) {
		c.String(&b.Title)
		c.Int(&b.Rounds)
		c.Int(&b.Sets)
		c.count(&b.Contacts)
	})
	c.String(&s.Program)
	c.Float(&s.Speed)
	c.Uint(&s.Seed)
	c.Bool(&s.ByHand)
	compact.Optional(&c.Coder, &s.Weeks, func(w *journal.Weeks) {
		c.String(&w.Title)
		c.String(&w.Starts)
		c.Int(&w.Week)
		c.String(&w.Date)
		c.Int(&w.Place)
		c.String(&w.Session)
	})
}

func (c *codec) set(s *journal.Set) {
	c.place(&s.Place)
	c.String(&s.Name)
	c.String(&s.Outcome)
	c.String(&s.End)
	c.Bool(&s.ByHand)
	c.Float(&s.PlannedS)
	c.Float(&s.TakenS)
	c.Float(&s.PausedS)
	c.Int(&s.Reps)
	c.Int(&s.Planned)
	c.count(&s.Contacts)
	compact.List(&c.Coder, &s.Sides, c.String)
	c.Bool(&s.Easier)
	c.String(&s.Variant)
	c.Bool(&s.Paced)
}

func (c *codec) rest(r *journal.Rest) {
	c.place(&r.Place)
	c.Float(&r.PrescribedS)
	c.Float(&r.TakenS)
	c.Float(&r.PausedS)
	c.String(&r.End)
}

func (c *codec) rating(r *journal.Rating) {
	compact.List(&c.Coder, &r.Rounds, c.Int)
	compact.Optional(&c.Coder, &r.RPE, c.Float)
	compact.Optional(&c.Coder, &r.Pain, c.Bool)
	compact.Optional(&c.Coder, &r.Where, c.String)
	compact.Optional(&c.Coder, &r.PainLevel, c.Int)
	c.Bool(&r.NoPain)
	compact.Optional(&c.Coder, &r.Note, c.String)
}

func (c *codec) measure(m *journal.Measure) {
	c.place(&m.Place)
	c.String(&m.Name)
	c.String(&m.Side)
	c.Int(&m.Try)
	c.String(&m.Measure)
	compact.Optional(&c.Coder, &m.Value, c.Float)
	c.String(&m.Way)
	c.Bool(&m.Practice)
}

func (c *codec) count(p *journal.Count) { c.Int(&p.N); c.Bool(&p.Known) }

func (c *codec) place(p *journal.Place) { c.Int(&p.Block); c.Int(&p.Round); c.Int(&p.Exercise) }

package journal

import (
	"errors"
	"time"

	"coldfloor/internal/compact"
)

// keeper codes an index, to be kept beside its journal.
type keeper struct {
	compact.Coder
	starts []*Started       // what was prescribed, each once
	number map[*Started]int // of each, from 1
}

// index codes x.
func (k *keeper) index(x *index) {
	k.int64(&x.length)
	k.Int(&x.lines)
	compact.List(&k.Coder, &x.damage, func(d **Damage) { k.damage(d) })
	runs := make([]*indexed, 0, len(x.runs))
	for _, run := range x.runs {
		runs = append(runs, run)
		k.learn(run.Started)
	}
	compact.List(&k.Coder, &k.starts, func(s **Started) {
		if k.Reading {
			*s = &Started{}
		}
		k.started(*s)
	})
	compact.List(&k.Coder, &runs, func(r **indexed) {
		if k.Reading {
			*r = &indexed{Run: &Run{lean: &figures{}}}
		}
		k.run(*r)
	})
	if !k.Reading {
		return
	}
	x.runs = make(map[string]*indexed, len(runs))
	for _, run := range runs {
		if run != nil {
			x.runs[run.ID] = run
		}
	}
}

// learn gives what was prescribed a number.
func (k *keeper) learn(s *Started) {
	if s != nil && k.number[s] == 0 {
		k.starts = append(k.starts, s)
		k.number[s] = len(k.starts)
	}
}

func (k *keeper) damage(d **Damage) {
	if k.Reading {
		*d = &Damage{Err: errors.New("")}
	}
	text := (*d).Err.Error()
	k.Int(&(*d).Number)
	k.Text(&text)
	k.Bool(&(*d).Unknown)
	k.Bool(&(*d).Whole)
	if k.Reading {
		(*d).Err = errors.New(text)
	}
}

func (k *keeper) int64(p *int64) {
	v := int(*p)
	k.Int(&v)
	*p = int64(v)
}

func (k *keeper) started(s *Started) {
	k.String(&s.Title)
	k.String(&s.Source)
	k.String(&s.Player)
	k.Float(&s.TotalS)
	compact.List(&k.Coder, &s.Blocks, func(b *PlannedBlock) {
		k.String(&b.Title)
		k.Int(&b.Rounds)
		k.Int(&b.Sets)
		k.count(&b.Contacts)
	})
	k.String(&s.Program)
	k.Float(&s.Speed)
	k.Uint(&s.Seed)
	k.Bool(&s.ByHand)
	compact.Optional(&k.Coder, &s.Weeks, func(w *Weeks) {
		k.String(&w.Title)
		k.String(&w.Starts)
		k.Int(&w.Week)
		k.String(&w.Date)
		k.Int(&w.Place)
		k.String(&w.Session)
	})
}

// run codes a lean run.
func (k *keeper) run(x *indexed) {
	r := x.Run
	k.Text(&r.ID)
	k.ref(&r.Started)
	k.Time(&r.Start)
	k.String((*string)(&r.State))
	k.int64((*int64)(&r.Elapsed))
	k.int64((*int64)(&r.Clock))
	k.Int(&r.Pauses)
	compact.List(&k.Coder, &r.Easier, func(e *Exercise) { k.Int(&e.Block); k.Int(&e.Exercise) })
	compact.List(&k.Coder, &r.Rating.Rounds, k.Int)
	compact.Optional(&k.Coder, &r.Rating.RPE, k.Float)
	compact.Optional(&k.Coder, &r.Rating.Pain, k.Bool)
	compact.List(&k.Coder, &r.Said, k.statement)
	k.Bool(&r.Withdrawn)
	k.Time(&r.Removed)
	k.Int(&r.LastN)
	k.Int(&r.Missing)
	k.Int(&r.Differ)
	k.Bool(&r.length)
	k.figures(r.lean)
	compact.List(&k.Coder, &x.extents, func(e *extent) { k.int64(&e.at); k.int64(&e.size); k.Int(&e.before) })
	compact.List(&k.Coder, &x.problems, k.Text)
}

// ref codes what was prescribed by its number.
func (k *keeper) ref(s **Started) {
	n := k.number[*s]
	k.Int(&n)
	switch {
	case !k.Reading || n == 0:
	case n < 0 || n > len(k.starts):
		k.Err, k.Buf = compact.ErrShort, nil
	default:
		*s = k.starts[n-1]
	}
}

func (k *keeper) statement(s *Statement) {
	k.Time(&s.At)
	compact.Optional(&k.Coder, &s.Pain, k.Bool)
	k.String(&s.Where)
	compact.Optional(&k.Coder, &s.Level, k.Int)
	k.Text(&s.Note)
	k.Bool(&s.Slip)
}

func (k *keeper) figures(f *figures) {
	compact.List(&k.Coder, &f.rounds, k.Int)
	k.count(&f.sets)
	k.count(&f.reps)
	k.count(&f.contacts)
	k.Int(&f.ended)
	k.Bool(&f.worked)
	k.Bool(&f.jumped)
	k.Time(&f.jumpedAt)
	k.Time(&f.end)
	compact.List(&k.Coder, &f.days, func(d *Day) {
		k.date(&d.Date)
		k.int64((*int64)(&d.Worked))
		k.Float(&d.Part)
		k.count(&d.Contacts)
	})
}

// date codes midnight UTC.
func (k *keeper) date(p *time.Time) {
	day := int(p.Unix() / (24 * 60 * 60))
	k.Int(&day)
	*p = time.Unix(int64(day)*24*60*60, 0).UTC()
}

func (k *keeper) count(c *Count) { k.Int(&c.N); k.Bool(&c.Known) }

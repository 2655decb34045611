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
	space  space
}

// index codes x, except for its length. It is written without a shelf, whose
// runs are returned to be put after it, and read with all its runs on one.
func (k *keeper) index(x *index) (runs []byte) {
	k.Int(&x.lines)
	compact.List(&k.Coder, &x.damage, func(d **Damage) { k.damage(d) })
	if !k.Reading {
		for _, run := range x.runs {
			k.learn(run.Started)
		}
	}
	compact.List(&k.Coder, &k.starts, func(s **Started) {
		if k.Reading {
			*s = &Started{}
		}
		k.started(*s)
	})
	if k.Reading {
		x.shelf = k.shelf()
		return nil
	}
	return k.shelve(x.runs)
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

// date codes midnight UTC.
func (k *keeper) date(p *time.Time) {
	day := int(p.Unix() / (24 * 60 * 60))
	k.Int(&day)
	*p = time.Unix(int64(day)*24*60*60, 0).UTC()
}

func (k *keeper) count(c *Count) { k.Int(&c.N); k.Bool(&c.Known) }

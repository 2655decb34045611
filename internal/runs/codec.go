package runs

import (
	"encoding/binary"
	"errors"
	"math"
	"time"

	"coldfloor/internal/journal"
)

// codec writes journal lines in few bytes, or reads them back. One description
// of a line serves both ways, so that the two cannot differ. Everything of a
// line is kept but the session's text.
type codec struct {
	reading bool
	buf     []byte // written so far, or left to read
	err     error  // of reading; what is read after it is zero

	words map[string]string // read before, so that each is held once
	zone  *time.Location    // of the line read last
}

// maxWords bounds what codec.words holds on to.
const maxWords = 4096

var errShort = errors.New("a temporary file is damaged")

// line codes everything of l but its run, which its block names.
func (c *codec) line(l *journal.Line) {
	c.int(&l.N)
	c.time(&l.At)
	c.float(&l.Clock)
	c.string((*string)(&l.Event))
	l.V = journal.Version
	optional(c, &l.Started, c.started)
	optional(c, &l.Set, c.set)
	optional(c, &l.Rest, c.rest)
	optional(c, &l.Pause, func(p *journal.Pause) { c.string(&p.Cause) })
	optional(c, &l.Resume, func(r *journal.Resume) { c.bool(&r.Restart); c.int(&r.Step) })
	optional(c, &l.Move, func(m *journal.Move) { c.string(&m.Cause); c.string(&m.Kind); c.place(&m.Place) })
	optional(c, &l.Extend, func(e *journal.Extend) { c.string(&e.Kind); c.float(&e.ByS); c.place(&e.Place) })
	optional(c, &l.Variant, func(v *journal.Variant) { c.place(&v.Place); c.string(&v.Name); c.bool(&v.Easier) })
	optional(c, &l.Finish, func(f *journal.Finish) { c.string(&f.Outcome); c.float(&f.ElapsedS) })
	optional(c, &l.Measure, c.measure)
	optional(c, &l.Rating, c.rating)
	optional(c, &l.Correct, func(p *journal.Correct) { optional(c, &p.At, c.time); optional(c, &p.LengthS, c.float) })
}

func (c *codec) started(s *journal.Started) {
	c.string(&s.Title)
	c.string(&s.Source)
	c.string(&s.Player)
	c.float(&s.TotalS)
	list(c, &s.Blocks, func(b *journal.PlannedBlock) {
		c.string(&b.Title)
		c.int(&b.Rounds)
		c.int(&b.Sets)
		c.count(&b.Contacts)
	})
	c.string(&s.Program)
	c.float(&s.Speed)
	c.uint(&s.Seed)
	c.bool(&s.ByHand)
	optional(c, &s.Weeks, func(w *journal.Weeks) {
		c.string(&w.Title)
		c.string(&w.Starts)
		c.int(&w.Week)
		c.string(&w.Date)
		c.int(&w.Place)
		c.string(&w.Session)
	})
}

func (c *codec) set(s *journal.Set) {
	c.place(&s.Place)
	c.string(&s.Name)
	c.string(&s.Outcome)
	c.string(&s.End)
	c.bool(&s.ByHand)
	c.float(&s.PlannedS)
	c.float(&s.TakenS)
	c.float(&s.PausedS)
	c.int(&s.Reps)
	c.int(&s.Planned)
	c.count(&s.Contacts)
	list(c, &s.Sides, c.string)
	c.bool(&s.Easier)
	c.string(&s.Variant)
	c.bool(&s.Paced)
}

func (c *codec) rest(r *journal.Rest) {
	c.place(&r.Place)
	c.float(&r.PrescribedS)
	c.float(&r.TakenS)
	c.float(&r.PausedS)
	c.string(&r.End)
}

func (c *codec) rating(r *journal.Rating) {
	list(c, &r.Rounds, c.int)
	optional(c, &r.RPE, c.float)
	optional(c, &r.Pain, c.bool)
	optional(c, &r.Where, c.string)
	optional(c, &r.PainLevel, c.int)
	c.bool(&r.NoPain)
	optional(c, &r.Note, c.string)
}

func (c *codec) measure(m *journal.Measure) {
	c.place(&m.Place)
	c.string(&m.Name)
	c.string(&m.Side)
	c.int(&m.Try)
	c.string(&m.Measure)
	optional(c, &m.Value, c.float)
	c.string(&m.Way)
	c.bool(&m.Practice)
}

func (c *codec) place(p *journal.Place) { c.int(&p.Block); c.int(&p.Round); c.int(&p.Exercise) }

// optional codes what may be missing.
func optional[T any](c *codec, p **T, code func(*T)) {
	there := *p != nil
	c.bool(&there)
	if !there {
		return
	}
	if c.reading {
		*p = new(T)
	}
	code(*p)
}

// list codes a list; a nil one stays nil.
func list[T any](c *codec, p *[]T, code func(*T)) {
	n := len(*p) + 1
	if *p == nil {
		n = 0
	}
	c.int(&n)
	if c.reading {
		if n == 0 || n-1 > len(c.buf) { // an element takes a byte at least
			return
		}
		*p = make([]T, n-1)
	}
	for i := range *p {
		code(&(*p)[i])
	}
}

func (c *codec) int(p *int) {
	if !c.reading {
		c.buf = binary.AppendVarint(c.buf, int64(*p))
		return
	}
	*p = int(c.varint())
}

func (c *codec) count(p *journal.Count) { c.int(&p.N); c.bool(&p.Known) }

func (c *codec) uint(p *uint64) {
	v := int(*p) // all its bits, whatever its sign
	c.int(&v)
	*p = uint64(v)
}

func (c *codec) varint() int64 {
	v, n := binary.Varint(c.buf)
	if n <= 0 {
		c.err, c.buf = errShort, nil
		return 0
	}
	c.buf = c.buf[n:]
	return v
}

func (c *codec) bool(p *bool) {
	n := 0
	if *p {
		n = 1
	}
	c.int(&n)
	*p = n == 1
}

// float codes whole thousandths, as a journal's seconds are, in few bytes, and
// any other figure in nine.
func (c *codec) float(p *float64) {
	if c.reading {
		v := c.varint()
		if v != math.MinInt64 {
			*p = float64(v) / 1000
		} else if bits := c.take(8); bits != nil {
			*p = math.Float64frombits(binary.LittleEndian.Uint64(bits))
		}
		return
	}
	ms := math.Round(*p * 1000)
	if math.Abs(ms) < 1<<53 && ms/1000 == *p {
		c.buf = binary.AppendVarint(c.buf, int64(ms))
		return
	}
	c.buf = binary.AppendVarint(c.buf, math.MinInt64)
	c.buf = binary.LittleEndian.AppendUint64(c.buf, math.Float64bits(*p))
}

func (c *codec) string(p *string) {
	n := len(*p)
	c.int(&n)
	if !c.reading {
		c.buf = append(c.buf, *p...)
		return
	}
	*p = c.word(c.take(n))
}

// word returns b as a string, the same one for a text read before.
func (c *codec) word(b []byte) string {
	if s, ok := c.words[string(b)]; ok {
		return s
	}
	if c.words == nil || len(c.words) >= maxWords {
		c.words = map[string]string{}
	}
	s := string(b)
	c.words[s] = s
	return s
}

func (c *codec) take(n int) []byte {
	if n < 0 || n > len(c.buf) {
		c.err, c.buf = errShort, nil
		return nil
	}
	b := c.buf[:n]
	c.buf = c.buf[n:]
	return b
}

// time codes a moment and its offset from UTC.
func (c *codec) time(p *time.Time) {
	sec, nsec := int(p.Unix()), p.Nanosecond()
	_, offset := p.Zone()
	c.int(&sec)
	c.int(&nsec)
	c.int(&offset)
	if !c.reading {
		return
	}
	t := time.Unix(int64(sec), int64(nsec))
	if c.zone == nil || offset != offsetOf(t.In(c.zone)) {
		c.zone = time.FixedZone("", offset)
	}
	*p = t.In(c.zone)
}

func offsetOf(t time.Time) int { _, o := t.Zone(); return o }

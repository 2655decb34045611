// Package compact writes values in few bytes, or reads them back. One
// description of a record serves both ways, so that the two cannot differ.
package compact

import (
	"encoding/binary"
	"errors"
	"math"
	"time"
)

// Coder writes values to Buf, or with Reading takes them from it. After an
// error of reading, what is read is zero.
type Coder struct {
	Reading bool
	Buf     []byte // written so far, or left to read
	Err     error  // of reading

	// Source is the whole of what is read, if it is to be held on to: texts are
	// then parts of it, and take no memory of their own.
	Source string

	words map[string]string // read before, so that each is held once
	zone  *time.Location    // of the time read last
}

// maxWords bounds what Coder.words holds on to.
const maxWords = 4096

// ErrShort is the error of reading what no Coder wrote, or not in that order.
var ErrShort = errors.New("a temporary file is damaged")

// Optional codes what may be missing.
func Optional[T any](c *Coder, p **T, code func(*T)) {
	there := *p != nil
	c.Bool(&there)
	if !there {
		return
	}
	if c.Reading {
		*p = new(T)
	}
	code(*p)
}

// List codes a list; a nil one stays nil.
func List[T any](c *Coder, p *[]T, code func(*T)) {
	n := len(*p) + 1
	if *p == nil {
		n = 0
	}
	c.Int(&n)
	if c.Reading {
		if n < 0 || n-1 > len(c.Buf) { // an element takes a byte at least
			c.Err, c.Buf, n = ErrShort, nil, 0
		}
		if n == 0 {
			return
		}
		*p = make([]T, n-1)
	}
	for i := range *p {
		code(&(*p)[i])
	}
}

// Int codes a whole number, a small one in few bytes.
func (c *Coder) Int(p *int) {
	if !c.Reading {
		c.Buf = binary.AppendVarint(c.Buf, int64(*p))
		return
	}
	*p = int(c.varint())
}

// Uint codes a number of 64 bits without a sign.
func (c *Coder) Uint(p *uint64) {
	v := int(*p) // all its bits, whatever its sign
	c.Int(&v)
	*p = uint64(v)
}

func (c *Coder) varint() int64 {
	if len(c.Buf) > 0 && c.Buf[0] < 0x80 { // most are small
		v := int64(c.Buf[0])
		c.Buf = c.Buf[1:]
		return v>>1 ^ -(v & 1)
	}
	v, n := binary.Varint(c.Buf)
	if n <= 0 {
		c.Err, c.Buf = ErrShort, nil
		return 0
	}
	c.Buf = c.Buf[n:]
	return v
}

// Bool codes a yes or no.
func (c *Coder) Bool(p *bool) {
	n := 0
	if *p {
		n = 1
	}
	c.Int(&n)
	*p = n == 1
}

// Float codes whole thousandths, as a journal's seconds are, in few bytes, and
// any other figure in nine.
func (c *Coder) Float(p *float64) {
	if c.Reading {
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
		c.Buf = binary.AppendVarint(c.Buf, int64(ms))
		return
	}
	c.Buf = binary.AppendVarint(c.Buf, math.MinInt64)
	c.Buf = binary.LittleEndian.AppendUint64(c.Buf, math.Float64bits(*p))
}

// String codes a text that may come often: each is held once when read.
func (c *Coder) String(p *string) {
	n := len(*p)
	c.Int(&n)
	if !c.Reading {
		c.Buf = append(c.Buf, *p...)
		return
	}
	*p = c.word(c.take(n))
}

// Words is texts, each once, that what is coded names by their numbers. The zero
// Words is empty.
type Words struct {
	List []string
	at   map[string]int
}

// Number returns the number of a text in the list, where it is put if it is new.
func (w *Words) Number(text string) int {
	if len(w.at) != len(w.List) {
		w.at = make(map[string]int, len(w.List))
		for i, t := range w.List {
			w.at[t] = i
		}
	}
	i, ok := w.at[text]
	if !ok {
		if i = len(w.List); i == 0 {
			w.at = map[string]int{}
		}
		w.at[text], w.List = i, append(w.List, text)
	}
	return i
}

// Word codes a text by its number in a list.
func (c *Coder) Word(w *Words, p *string) {
	if !c.Reading {
		c.Buf = binary.AppendVarint(c.Buf, int64(w.Number(*p)))
		return
	}
	n := c.varint()
	if n < 0 || n >= int64(len(w.List)) {
		c.Err, c.Buf = ErrShort, nil
		return
	}
	*p = w.List[n]
}

// Text codes a text that comes once.
func (c *Coder) Text(p *string) {
	n := len(*p)
	c.Int(&n)
	if !c.Reading {
		c.Buf = append(c.Buf, *p...)
		return
	}
	at := len(c.Source) - len(c.Buf)
	if b := c.take(n); c.Source == "" || b == nil {
		*p = string(b)
		return
	}
	*p = c.Source[at : at+n]
}

// word returns b as a string, the same one for a text read before.
func (c *Coder) word(b []byte) string {
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

func (c *Coder) take(n int) []byte {
	if n < 0 || n > len(c.Buf) {
		c.Err, c.Buf = ErrShort, nil
		return nil
	}
	b := c.Buf[:n]
	c.Buf = c.Buf[n:]
	return b
}

// Time codes a moment and its offset from UTC.
func (c *Coder) Time(p *time.Time) {
	sec, nsec := int(p.Unix()), p.Nanosecond()
	_, offset := p.Zone()
	c.Int(&sec)
	c.Int(&nsec)
	c.Int(&offset)
	if !c.Reading {
		return
	}
	t := time.Unix(int64(sec), int64(nsec))
	if c.zone == nil || offset != offsetOf(t.In(c.zone)) {
		c.zone = time.FixedZone("", offset)
	}
	*p = t.In(c.zone)
}

func offsetOf(t time.Time) int { _, o := t.Zone(); return o }

package journal

import (
	"bufio"
	"hash/crc32"
	"io"
	"iter"
	"time"
)

// Extent is a stretch of a journal, of whole lines.
type Extent struct {
	At, Size int64 // bytes
	Before   int   // lines that stand before it
}

// Cut cuts a part of a journal into n at most, at lines' ends.
func Cut(r io.ReaderAt, e Extent, n int) ([]Extent, error) {
	parts, err := cut(r, extent{e.At, e.Size, e.Before}, n)
	if err != nil {
		return nil, err
	}
	var all []Extent
	for _, p := range parts {
		all = append(all, Extent{p.at, p.size, p.before})
	}
	return all, nil
}

// Stretch is lines of one run that stand together in a journal.
type Stretch struct {
	Extent
	Lines []Entry // without the session's text; valid until the next Stretch is read
	Sum   uint64  // of their texts; the sums of a run's stretches add up to that of the run
}

// Stretches reads a journal from the end of from on, and yields the lines of
// each run that stand together, in memory that does not grow with the journal.
// A line that cannot be used gives a *Damage and the reading goes on; any other
// error is the last thing given. From is moved on to the end of what was read.
//
// Moments are in zones of a fixed offset, wherever they are read.
func Stretches(r io.Reader, from *Extent) iter.Seq2[*Stretch, error] {
	return func(yield func(*Stretch, error) bool) {
		g := gatherer{yield: yield, scan: scanner{arena: &arena{}}}
		end := readFrom(r, Entry{Number: from.Before, at: from.At, size: from.Size}, &g.scan, g.take)
		*from = Extent{At: end.at, Before: end.Number}
		if !g.stopped {
			g.close()
		}
	}
}

// gatherer puts lines together into stretches.
type gatherer struct {
	scan    scanner
	open    Stretch
	run     string // of open
	zone    *time.Location
	yield   func(*Stretch, error) bool
	stopped bool
}

// take takes a line, or what is wrong with one.
func (g *gatherer) take(e Entry, err error) bool {
	if err != nil {
		if _, damaged := err.(*Damage); !damaged && !g.close() {
			return false
		}
		g.stopped = !g.yield(nil, err)
		return !g.stopped
	}
	if len(g.open.Lines) > 0 && (g.run != e.Run || len(g.open.Lines) >= maxStretch) {
		if !g.close() {
			return false
		}
		g.keep(&e)
	}
	if g.run = e.Run; len(g.open.Lines) == 0 {
		g.open.Extent = Extent{At: e.at, Before: e.Number - 1}
	}
	g.open.Size = e.at + e.size - g.open.At
	g.open.Sum += sumOf(e.Text)
	e.Text = nil
	if e.Started != nil {
		e.Started.Text = ""
	}
	g.fix(&e.At)
	if e.Correct != nil && e.Correct.At != nil {
		g.fix(e.Correct.At)
	}
	g.open.Lines = append(g.open.Lines, e)
	return true
}

// maxStretch bounds the lines of a stretch: a run may have any number.
const maxStretch = 20_000

// keep moves the set and the rest of a line to the beginning of the arena.
func (g *gatherer) keep(e *Entry) {
	a := g.scan.arena
	if e.Set != nil {
		set := *e.Set
		e.Set = a.set()
		*e.Set = set
	}
	if e.Rest != nil {
		rest := *e.Rest
		e.Rest = a.rest()
		*e.Rest = rest
	}
}

// close yields the stretch that is open.
func (g *gatherer) close() bool {
	if len(g.open.Lines) > 0 {
		g.stopped = !g.yield(&g.open, nil)
	}
	g.open = Stretch{Lines: g.open.Lines[:0]}
	g.scan.arena.clear()
	return !g.stopped
}

// fix puts a moment into a zone of its offset.
func (g *gatherer) fix(t *time.Time) {
	offset := offsetOf(*t)
	if g.zone == nil || offsetOf(t.In(g.zone)) != offset {
		g.zone = time.FixedZone("", offset)
	}
	*t = t.In(g.zone)
}

// sumOf returns a number that tells a line from others that an accident may put
// in its place.
func sumOf(text []byte) uint64 {
	x := uint64(crc32.Checksum(text, castagnoli))<<32 | uint64(uint32(len(text)))
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9 // so that sums of several differ too (the finalizer of SplitMix64)
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}

// Finder reads runs out of a journal whose places in it are known.
type Finder struct {
	r   io.ReaderAt
	buf *bufio.Reader
}

// NewFinder returns a Finder of the journal in r.
func NewFinder(r io.ReaderAt) *Finder { return &Finder{r: r} }

// Lines reads the lines of a run in stretches of the journal, as Stretches gives
// them, and returns them with their sum.
func (f *Finder) Lines(run string, extents []Extent) (lines []Entry, sum uint64, err error) {
	if f.buf == nil {
		f.buf = bufio.NewReaderSize(nil, 64<<10)
	}
	for _, e := range extents {
		from := Extent{At: e.At, Before: e.Before}
		f.buf.Reset(io.NewSectionReader(f.r, e.At, e.Size))
		for s, lineErr := range Stretches(f.buf, &from) {
			if _, damaged := lineErr.(*Damage); lineErr != nil && !damaged {
				return nil, 0, lineErr
			}
			if s == nil || s.Lines[0].Run != run {
				continue
			}
			sum += s.Sum
			lines = append(lines, own(s.Lines)...)
		}
	}
	return lines, sum, nil
}

// own gives lines sets and rests of their own, that stay.
func own(lines []Entry) []Entry {
	for i := range lines {
		if s := lines[i].Set; s != nil {
			set := *s
			lines[i].Set = &set
		}
		if r := lines[i].Rest; r != nil {
			rest := *r
			lines[i].Rest = &rest
		}
	}
	return lines
}

// arena is the memory of the sets and rests of a stretch, used again for the
// next.
type arena struct {
	sets  []Set
	rests []Rest
}

// set returns an empty set; nil without an arena.
func (a *arena) set() *Set {
	if a == nil {
		return nil
	}
	a.sets = append(a.sets, Set{}) // if it moves, those before stay as they are
	return &a.sets[len(a.sets)-1]
}

// rest returns an empty rest; nil without an arena.
func (a *arena) rest() *Rest {
	if a == nil {
		return nil
	}
	a.rests = append(a.rests, Rest{})
	return &a.rests[len(a.rests)-1]
}

func (a *arena) clear() { a.sets, a.rests = a.sets[:0], a.rests[:0] }

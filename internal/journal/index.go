package journal

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"sync"
)

// extent is a stretch of a journal, of whole lines.
type extent struct {
	at, size int64
	before   int // lines that stand before it
}

// indexed is a lean run, with the stretches of the journal that hold its lines.
type indexed struct {
	*Run
	extents  []extent
	problems []string // with its lines
	stale    bool     // it has lines that it was not made of
}

// index is what a journal tells without its sets, up to a line's end.
type index struct {
	length int64 // bytes that it is of
	lines  int
	runs   map[string]*indexed
	damage []*Damage
}

// indexer makes the index of a part of a journal.
type indexer struct {
	index
	starts map[string]*Started // each once, without its text
	open   *indexed            // the run whose lines are at hand
	lines  []Entry             // of it, if it is not stale
}

// leastPart is the least of a journal that is worth a goroutine of its own.
const leastPart = 1 << 20

// indexOf indexes the journal in r between two lines' ends, in parts side by
// side. It counts for the lines that stand before.
func indexOf(r io.ReaderAt, from extent) (*index, error) {
	parts, err := cut(r, from, min(runtime.GOMAXPROCS(0), int(from.size/leastPart)+1))
	if err != nil {
		return nil, err
	}
	made := make([]*index, len(parts))
	errs := make([]error, len(parts))
	var all sync.WaitGroup
	for i, p := range parts {
		all.Go(func() { made[i], errs[i] = indexPart(r, p) })
	}
	all.Wait()
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	for _, x := range made[1:] {
		made[0].join(x)
	}
	return made[0], made[0].renew(r)
}

// cut cuts a stretch into n at most, at lines' ends.
func cut(r io.ReaderAt, from extent, n int) ([]extent, error) {
	parts := []extent{from}
	for n := int64(n); n > 1; n-- {
		last := &parts[len(parts)-1]
		at, err := lineEnd(r, last.at+last.size/n, last.at+last.size)
		if err != nil {
			return nil, err
		}
		rest := extent{at: at, size: last.at + last.size - at}
		if last.size = at - last.at; rest.size > 0 {
			parts = append(parts, rest)
		}
	}
	for i := range parts[1:] {
		lines, err := countLines(r, parts[i])
		if err != nil {
			return nil, err
		}
		parts[i+1].before = parts[i].before + lines
	}
	return parts, nil
}

// lineEnd returns where the line that at stands in ends, or end.
func lineEnd(r io.ReaderAt, at, end int64) (int64, error) {
	buf := make([]byte, 4096)
	for at < end {
		n, err := r.ReadAt(buf[:min(int64(len(buf)), end-at)], at)
		if i := bytes.IndexByte(buf[:n], '\n'); i >= 0 {
			return at + int64(i) + 1, nil
		}
		if at += int64(n); err != nil {
			return at, err
		}
	}
	return end, nil
}

// countLines returns the number of line feeds in a stretch.
func countLines(r io.ReaderAt, e extent) (int, error) {
	buf := make([]byte, 256<<10)
	lines := 0
	for at := e.at; at < e.at+e.size; {
		n, err := r.ReadAt(buf[:min(int64(len(buf)), e.at+e.size-at)], at)
		lines += bytes.Count(buf[:n], []byte("\n"))
		if at += int64(n); err != nil {
			return lines, err
		}
	}
	return lines, nil
}

// read calls each with the lines of a stretch.
func (e extent) read(r io.ReaderAt, each func(Entry, error) bool) {
	readFrom(io.NewSectionReader(r, e.at, e.size), Entry{Number: e.before, at: e.at}, each)
}

// indexPart indexes one stretch.
func indexPart(r io.ReaderAt, e extent) (*index, error) {
	x := indexer{index: index{length: e.at + e.size, runs: map[string]*indexed{}}, starts: map[string]*Started{}}
	last := e.before
	var err error
	e.read(r, func(e Entry, lineErr error) bool {
		switch d, damaged := lineErr.(*Damage); {
		case damaged:
			x.damage, last = append(x.damage, d), d.Number
		case lineErr != nil:
			err = lineErr
		default:
			x.add(e)
			last = e.Number
		}
		return true
	})
	x.close()
	x.index.lines = last
	return &x.index, err
}

// add takes a line.
func (x *indexer) add(e Entry) {
	if x.open == nil || x.open.ID != e.Run {
		x.close()
		if x.open = x.runs[e.Run]; x.open == nil {
			x.open = &indexed{Run: &Run{ID: e.Run}}
			x.runs[e.Run] = x.open
		} else {
			x.open.stale = true
		}
	}
	x.open.extend(extent{e.at, e.size, e.Number - 1})
	if !x.open.stale {
		e.Text = nil
		x.lines = append(x.lines, e)
	}
}

// extend takes a line's place.
func (x *indexed) extend(e extent) {
	if n := len(x.extents); n > 0 {
		switch last := &x.extents[n-1]; {
		case last.at <= e.at && e.at+e.size <= last.at+last.size:
			return // a second record of the same line
		case last.at+last.size == e.at:
			last.size += e.size
			return
		}
	}
	x.extents = append(x.extents, e)
}

// close makes the run whose lines are at hand.
func (x *indexer) close() {
	if x.open != nil && !x.open.stale {
		x.open.make(x.lines, x.starts)
	}
	x.open, x.lines = nil, x.lines[:0]
}

// make makes the lean run of its lines.
func (x *indexed) make(lines []Entry, starts map[string]*Started) {
	run, problems := build(lines)
	run.slim()
	run.Started = shared(run.Started, starts)
	x.Run, x.stale, x.problems = run, false, nil
	for _, p := range problems {
		x.problems = append(x.problems, p.Error())
	}
}

// shared returns what was prescribed without the session's text, once for all
// runs of the same.
func shared(s *Started, starts map[string]*Started) *Started {
	if s == nil {
		return nil
	}
	plain := *s
	plain.Text = ""
	k := keeper{}
	k.started(&plain)
	if one := starts[string(k.Buf)]; one != nil {
		return one
	}
	starts[string(k.Buf)] = &plain
	return &plain
}

// join takes the index of the stretch that follows.
func (x *index) join(y *index) {
	x.length, x.lines, x.damage = y.length, y.lines, append(x.damage, y.damage...)
	for id, run := range y.runs {
		mine := x.runs[id]
		if mine == nil {
			x.runs[id] = run
			continue
		}
		mine.stale = true
		for _, e := range run.extents {
			mine.extend(e)
		}
	}
}

// renew makes the runs again that have lines which they were not made of.
func (x *index) renew(r io.ReaderAt) error {
	starts := map[string]*Started{}
	for id, run := range x.runs {
		if !run.stale {
			continue
		}
		lines, err := run.lines(r, id)
		if err != nil {
			return err
		}
		run.make(lines, starts)
	}
	return nil
}

// lines reads the lines of the run called id.
func (x *indexed) lines(r io.ReaderAt, id string) (lines []Entry, err error) {
	for _, e := range x.extents {
		e.read(r, func(e Entry, lineErr error) bool {
			if _, damaged := lineErr.(*Damage); lineErr != nil && !damaged {
				err = lineErr
			}
			if lineErr == nil && e.Run == id {
				e.Text = nil
				lines = append(lines, e)
			}
			return true
		})
	}
	if err == nil && len(lines) == 0 {
		err = fmt.Errorf("run %s is not in the journal any more", id)
	}
	return lines, err
}

// sorted returns the runs, the earliest first, and what is wrong with the
// journal's lines.
func (x *index) sorted() (runs []*Run, problems []error) {
	for _, d := range x.damage {
		problems = append(problems, d)
	}
	runs = make([]*Run, 0, len(x.runs))
	for _, run := range x.runs {
		runs = append(runs, run.Run)
	}
	slices.SortFunc(runs, func(a, b *Run) int { return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID)) })
	for _, run := range runs {
		for _, p := range x.runs[run.ID].problems {
			problems = append(problems, errors.New(p))
		}
	}
	return runs, problems
}

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

// index is what a journal tells without its sets, up to a line's end. It is
// not changed once it is made: what grows is another.
type index struct {
	length int64 // bytes that it is of
	lines  int
	shelf  *shelf       // runs as they were kept; nil: none
	gone   map[int]bool // on the shelf: their like is in runs
	runs   []*Run       // the others, lean, the earliest first
	damage []*Damage
}

// indexer makes the index of a part of a journal.
type indexer struct {
	index
	byID   map[string]*Run
	starts map[string]*Started // each once, without its text
	open   *Run                // whose lines are at hand
	lines  []Entry             // of it, unless it is stale
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
	x := made[0]
	for _, y := range made[1:] {
		x = x.join(y)
	}
	return x, x.renew(r)
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
	readFrom(io.NewSectionReader(r, e.at, e.size), Entry{Number: e.before, at: e.at}, &scanner{}, each)
}

// indexPart indexes one stretch.
func indexPart(r io.ReaderAt, e extent) (*index, error) {
	x := indexer{index: index{length: e.at + e.size}, byID: map[string]*Run{}, starts: map[string]*Started{}}
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
	for _, run := range x.byID {
		x.runs = append(x.runs, run)
	}
	x.sort()
	return &x.index, err
}

// sort puts the runs in the order of time.
func (x *index) sort() {
	slices.SortFunc(x.runs, compareRuns)
}

// add takes a line.
func (x *indexer) add(e Entry) {
	if x.open == nil || x.open.ID != e.Run {
		x.close()
		if x.open = x.byID[e.Run]; x.open == nil {
			x.open = &Run{ID: e.Run, lean: &lean{own: &figures{}}}
		} else {
			x.open.lean.stale = true
		}
	}
	x.open.lean.own.extend(extent{e.at, e.size, e.Number - 1})
	if !x.open.lean.stale {
		e.Text = nil
		x.lines = append(x.lines, e)
	}
}

// close makes the run whose lines are at hand.
func (x *indexer) close() {
	if x.open != nil && !x.open.lean.stale {
		x.byID[x.open.ID] = leanOf(x.lines, x.open.lean.own.extents, x.starts)
	}
	x.open, x.lines = nil, x.lines[:0]
}

// join returns the index of a stretch and the one that follows. Runs that have
// lines in both are stale.
func (x *index) join(y *index) *index {
	x = x.fetch(y)
	both := &index{shelf: x.shelf, gone: x.gone, length: y.length, lines: y.lines, damage: slices.Concat(x.damage, y.damage), runs: slices.Clone(x.runs)}
	find := x.finder(len(y.runs))
	for _, run := range y.runs {
		i := find(run.ID)
		if i < 0 {
			both.runs = append(both.runs, run)
			continue
		}
		one, own := *x.runs[i], figures{extents: slices.Clone(x.runs[i].figures().extents)}
		for _, e := range run.figures().extents {
			own.extend(e)
		}
		one.lean = &lean{stale: true, own: &own}
		both.runs[i] = &one
	}
	return both
}

// finder returns what finds runs by their names, so many of them.
func (x *index) finder(n int) func(id string) int {
	if n <= 4 {
		return func(id string) int { return slices.IndexFunc(x.runs, func(r *Run) bool { return r.ID == id }) }
	}
	at := make(map[string]int, len(x.runs))
	for i, r := range x.runs {
		at[r.ID] = i
	}
	return func(id string) int {
		if i, ok := at[id]; ok {
			return i
		}
		return -1
	}
}

// renew makes the runs again that have lines which they were not made of, in an
// index that nobody else has yet, and puts all in order.
func (x *index) renew(r io.ReaderAt) error {
	starts := map[string]*Started{}
	for i, run := range x.runs {
		if !run.lean.stale {
			continue
		}
		lines, err := linesOf(r, run)
		if err != nil {
			return err
		}
		x.runs[i] = leanOf(lines[run.ID], run.figures().extents, starts)
	}
	x.sort()
	return nil
}

// linesOf reads the lines of runs, by their names.
func linesOf(r io.ReaderAt, runs ...*Run) (map[string][]Entry, error) {
	lines := make(map[string][]Entry, len(runs))
	var all []extent
	for _, run := range runs {
		lines[run.ID] = nil
		all = append(all, run.figures().extents...)
	}
	var err error
	for _, e := range merged(all) {
		e.read(r, func(e Entry, lineErr error) bool {
			if _, damaged := lineErr.(*Damage); lineErr != nil && !damaged {
				err = lineErr
			}
			if _, wanted := lines[e.Run]; wanted && lineErr == nil {
				e.Text = nil
				lines[e.Run] = append(lines[e.Run], e)
			}
			return true
		})
	}
	for id, of := range lines {
		if err == nil && len(of) == 0 {
			err = fmt.Errorf("run %s is not in the journal any more", id)
		}
	}
	return lines, err
}

// merged returns stretches in the order of the journal, those that touch or
// overlap as one.
func merged(all []extent) []extent {
	slices.SortFunc(all, func(a, b extent) int { return cmp.Compare(a.at, b.at) })
	var one []extent
	for _, e := range all {
		if n := len(one); n > 0 && e.at <= one[n-1].at+one[n-1].size {
			one[n-1].size = max(one[n-1].size, e.at+e.size-one[n-1].at)
			continue
		}
		one = append(one, e)
	}
	return one
}

// problems returns what is wrong with the journal's lines.
func (x *index) problems() (all []error) {
	for _, d := range x.damage {
		all = append(all, d)
	}
	var with []*Run
	for i := range x.shelf.len() {
		if x.shelf.head(i).has(hasProblems) && !x.gone[i] {
			with = append(with, x.shelf.reader().run(i))
		}
	}
	with = append(with, x.runs...)
	slices.SortFunc(with, compareRuns)
	for _, run := range with {
		for _, p := range run.lean.problems {
			all = append(all, errors.New(p))
		}
	}
	return all
}

package journal

import (
	"bytes"
	"io"
	"os"
	"sync"
)

// Overview is what a journal tells without its sets and rests: enough for a
// list of runs, for what is unfinished, for when a session was done last and
// when there were jumps.
type Overview struct {
	Problems []error // *Damage, and what is wrong with the lines of a run

	decode sync.Once // every run
	runs   []*Run

	path  string
	file  os.FileInfo
	ended bool // its last line was
	index *index
}

// keepFrom is from how many bytes on an index is kept beside its journal, and
// from how many more on it is kept again; a variable for the tests.
var keepFrom int64 = 256 << 10

// ReadOverview reads the journal at path; one that does not exist is empty.
//
// What was read of a long journal is kept beside it, in a file of its own whose
// name begins with a dot and ends with .index, and is used the next time for as
// much of the journal as is still the same by its length and its CRC-32C. It
// can be deleted at any time; whatever is wrong with it, the journal is read.
func ReadOverview(path string) (*Overview, error) {
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		return &Overview{path: path, index: &index{}}, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	x := kept(path, f, info)
	had := x.length
	// A line that was not ended may still grow: it is read, and not kept.
	end, err := LastLineEnd(f, had, info.Size())
	if err != nil {
		return nil, err
	}
	if x, err = x.grow(f, end); err != nil {
		return nil, err
	}
	if x.length-had >= keepFrom {
		x = x.keep(path, f, info)
	}
	if x, err = x.grow(f, info.Size()); err != nil {
		return nil, err
	}
	return overviewOf(path, f, x)
}

// overviewOf returns the overview of an index of all of a journal.
func overviewOf(path string, f *os.File, x *index) (*Overview, error) {
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	last := []byte("\n")
	if x.length > 0 {
		if _, err := f.ReadAt(last, x.length-1); err != nil {
			return nil, err
		}
	}
	o := &Overview{path: path, file: info, ended: last[0] == '\n', index: x}
	o.Problems = x.problems()
	return o, nil
}

// grow returns the index of the journal up to a line's end.
func (x *index) grow(r io.ReaderAt, to int64) (*index, error) {
	if to <= x.length {
		return x, nil
	}
	more, err := indexOf(r, extent{x.length, to - x.length, x.lines})
	if err != nil || x.length == 0 {
		return more, err
	}
	both := x.join(more)
	return both, both.renew(r)
}

// Full returns runs of the overview, in their order, with their sets and all
// else that was left out, as the journal has them now.
func (o *Overview) Full(runs ...*Run) ([]*Run, error) {
	if len(runs) == 0 {
		return nil, nil
	}
	f, err := os.Open(o.path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	lines, err := linesOf(f, runs...)
	if err != nil {
		return nil, err
	}
	full := make([]*Run, len(runs))
	for i, r := range runs {
		full[i], _ = build(lines[r.ID])
	}
	return full, nil
}

// LastLineEnd returns where the last line that is ended ends, or from.
func LastLineEnd(r io.ReaderAt, from, size int64) (int64, error) {
	buf := make([]byte, 4096)
	for end := size; end > from; {
		at := max(from, end-int64(len(buf)))
		n, err := r.ReadAt(buf[:end-at], at)
		if err != nil && err != io.EOF {
			return 0, err
		}
		if i := bytes.LastIndexByte(buf[:n], '\n'); i >= 0 {
			return at + int64(i) + 1, nil
		}
		end = at
	}
	return from, nil
}

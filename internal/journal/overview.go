package journal

import (
	"bytes"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"time"

	"coldfloor/internal/wholefile"
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
		x.keep(path, f, info)
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

// keptHead begins a kept index: what it is, and the version of what is in it,
// which goes up whenever a run is folded in another way.
const keptHead = "coldfloor index 7\n"

// keptPath returns where the index of the journal at path is kept.
func keptPath(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".index")
}

// kept returns the index that is kept of a journal, or an empty one unless the
// journal still begins with all that the index is of: its file has not been
// written to since that was last seen, or else it has the same checksum.
func kept(path string, r io.ReaderAt, info os.FileInfo) *index {
	text, err := os.ReadFile(keptPath(path))
	if err != nil || !bytes.HasPrefix(text, []byte(keptHead)) || len(text) < len(keptHead)+stampLength+8 {
		return &index{}
	}
	had, text := text[len(keptHead):len(keptHead)+stampLength], text[len(keptHead)+stampLength:]
	sums, body := text[:8], text[8:]
	if binary.LittleEndian.Uint32(sums[4:]) != crc32.Checksum(body, castagnoli) {
		return &index{}
	}
	k := keeper{}
	k.Reading, k.Buf = true, body
	x := &index{}
	k.int64(&x.length)
	if x.length < 0 || x.length > info.Size() {
		return &index{}
	}
	same := true
	var summing sync.WaitGroup
	if now := stampOf(info); string(had) != string(now.bytes()) {
		summing.Go(func() {
			sum, err := checksum(r, x.length)
			if same = err == nil && sum == binary.LittleEndian.Uint32(sums); same && now.settled(time.Now()) {
				keepStamp(keptPath(path), now)
			}
		})
	}
	k.index(x)
	if summing.Wait(); k.Err != nil || !same {
		return &index{}
	}
	return x
}

// keep keeps x beside its journal. If it cannot be kept, nothing is lost.
func (x *index) keep(path string, r io.ReaderAt, info os.FileInfo) {
	sum, err := checksum(r, x.length)
	if err != nil {
		return
	}
	x = x.all()
	k := keeper{number: map[*Started]int{}}
	k.int64(&x.length)
	if k.index(x); !readable(k) {
		return
	}
	now := stampOf(info)
	if !now.settled(time.Now()) {
		now = stamp{}
	}
	text := binary.LittleEndian.AppendUint32(append([]byte(keptHead), now.bytes()...), sum)
	text = binary.LittleEndian.AppendUint32(text, crc32.Checksum(k.Buf, castagnoli))
	_ = wholefile.Write(keptPath(path), append(text, k.Buf...), wholefile.Options{Mode: 0o600, Force: true})
}

// readable reports whether all that was coded can be decoded.
func readable(k keeper) bool {
	back := keeper{}
	back.Reading, back.Buf = true, k.Buf
	var x index
	back.int64(&x.length)
	if back.index(&x); back.Err != nil || k.Err != nil {
		return false
	}
	_, err := x.shelf.all()
	return err == nil
}

// checksum returns the CRC-32C of the first bytes of a file: that of as many
// stretches of them as there are processors, one after the other.
func checksum(r io.ReaderAt, length int64) (uint32, error) {
	n := int64(runtime.GOMAXPROCS(0))
	const part = 4 << 20
	count := (length + part - 1) / part
	sums := make([]byte, 4*count)
	errs := make([]error, n)
	var all sync.WaitGroup
	for worker := range n {
		all.Go(func() {
			buf := make([]byte, 256<<10)
			for i := worker; i < count && errs[worker] == nil; i += n {
				sum := uint32(0)
				for at := i * part; at < min((i+1)*part, length); {
					n, err := r.ReadAt(buf[:min(int64(len(buf)), min((i+1)*part, length)-at)], at)
					sum = crc32.Update(sum, castagnoli, buf[:n])
					if at += int64(n); err != nil {
						errs[worker] = err
						return
					}
				}
				binary.LittleEndian.PutUint32(sums[4*i:], sum)
			}
		})
	}
	all.Wait()
	return crc32.Checksum(sums, castagnoli), errors.Join(errs...)
}

package runs

import (
	"bytes"
	"cmp"
	"hash/crc32"
	"os"
	"slices"
	"time"

	"coldfloor/internal/journal"
)

// castagnoli is the polynomial of CRC-32C (RFC 3720, section 12.1).
var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// reading is a journal that is read, with the CRC-32C of what was.
type reading struct {
	*os.File
	size  int64
	stamp []byte // see journal.Stamp
	at    int64  // what is read next
	sum   uint32
	all   *counted
}

// openReading opens a journal.
func openReading(path string, all *counted) (*reading, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, reason(err)
	}
	now := time.Now()
	info, err := f.Stat()
	if err != nil {
		f.Close()
		return nil, reason(err)
	}
	return &reading{File: f, size: info.Size(), stamp: journal.Stamp(info, now), all: all}, nil
}

// Read reads as a file does.
func (j *reading) Read(b []byte) (int, error) {
	n, err := j.ReadAt(b, j.at)
	j.at += int64(n)
	j.sum = crc32.Update(j.sum, castagnoli, b[:n])
	return n, cmp.Or(j.all.add(int64(n)), err)
}

// pass lets so many bytes pass.
func (j *reading) pass(n int64) error {
	buf := buffers.Get().(*[]byte)
	defer buffers.Put(buf)
	*buf = slices.Grow((*buf)[:0], 256<<10)
	for n > 0 {
		k, err := j.Read((*buf)[:min(n, 256<<10)])
		if n -= int64(k); err != nil {
			return err
		}
	}
	return nil
}

// skip passes over the first n bytes, whose CRC-32C is known.
func (j *reading) skip(n int64, sum uint32) {
	j.at, j.sum = n, sum
	_ = j.all.add(n) // whoever stops it is heard at the end
}

// again begins anew.
func (j *reading) again() { j.at, j.sum = 0, 0 }

// stamped reports whether the journal has a stamp, which one more write to its file
// would change.
func (j *reading) stamped() bool { return !bytes.Equal(j.stamp, make([]byte, journal.StampLength)) }

// beside returns a reading of the same journal from at on.
func (j *reading) beside(at int64) *reading { return &reading{File: j.File, at: at, all: j.all} }

// join goes on where another, which began where this one is, has come to.
func (j *reading) join(other *reading) {
	j.sum = joined(j.sum, other.sum, other.at-j.at)
	j.at = other.at
}

// joined returns the CRC-32C of two texts together, of their own and the length
// of the second. It is linear: each bit of the first tells as it does before as
// many zeros.
func joined(first, second uint32, length int64) uint32 {
	var zeros [4096]byte
	sum := ^first // crc32.Update turns all bits before and after
	for ; length > 0; length -= int64(len(zeros)) {
		sum = crc32.Update(sum, castagnoli, zeros[:min(length, int64(len(zeros)))])
	}
	return ^sum ^ second
}

package runs

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/wholefile"
)

// keptHead begins kept notes: what they are, and the version of their form,
// which goes up whenever a run is folded, or what is made of it is written, in
// another way.
const keptHead = "coldfloor review 1\n"

// keepFrom is from how many bytes of a journal on notes are kept of it: less is
// read as fast.
const keepFrom = 8 << 10

// castagnoli is the polynomial of CRC-32C (RFC 3720, section 12.1).
var castagnoli = crc32.MakeTable(crc32.Castagnoli)

// keptPath returns where the notes of the journal at path are kept: beside it.
func keptPath(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".review")
}

// title is what kept notes begin with: those of another program, or made
// otherwise, begin with something else.
func (m maker) title() []byte {
	return appendBytes(appendBytes([]byte(keptHead), []byte(journal.Program())), []byte(m.name))
}

// kept returns the notes that are kept of a journal, or nil unless it still
// begins with all that they are of: nobody has written to its file since they
// were held against it, or else it has the same CRC-32C as far as they go, and
// so much of it is read then. They are in the memory of buf.
func (m maker) kept(path string, j *reading, buf *[]byte) *notes {
	text, err := readInto(keptPath(path), buf)
	if err != nil {
		return nil
	}
	title := m.title()
	text, ok := bytes.CutPrefix(text, title)
	if !ok || len(text) < journal.StampLength+8 {
		return nil
	}
	stamp, sums, body := text[:journal.StampLength], text[journal.StampLength:][:8], text[journal.StampLength+8:]
	u32 := binary.LittleEndian.Uint32
	if u32(sums) != crc32.Update(crc32.Checksum(sums[4:], castagnoli), castagnoli, body) {
		return nil
	}
	n, err := decodeNotes(body)
	if err != nil || n.end.At > j.size {
		return nil
	}
	n.text = body
	if n.end.At == j.size && j.stamp[0] != 0 && bytes.Equal(stamp, j.stamp) {
		_ = j.all.add(j.size)
		return n
	}
	if err := j.pass(n.end.At); err != nil || j.sum != u32(sums[4:]) {
		return nil
	}
	if n.end.At == j.size {
		keepStamp(keptPath(path), int64(len(title)), j.stamp)
	}
	return n
}

// keepStamp puts a stamp into kept notes, in its place.
func keepStamp(path string, at int64, stamp []byte) {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return
	}
	defer f.Close()
	_, _ = f.WriteAt(stamp, at) // one torn is no stamp
}

// readInto reads a whole file into the memory of buf.
func readInto(path string, buf *[]byte) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	*buf = slices.Grow((*buf)[:0], int(info.Size()))[:info.Size()]
	_, err = io.ReadFull(f, *buf)
	return *buf, err
}

// keep keeps the notes beside their journal. If they cannot be kept, nothing is
// lost.
func (v *surveyor) keep(path string, j *reading, buf *[]byte) {
	if v.end.At < keepFrom {
		return
	}
	text := append(append((*buf)[:0], v.title()...), j.stamp...)
	at := len(text)
	text = binary.LittleEndian.AppendUint32(append(text, 0, 0, 0, 0), j.sum)
	text = v.encode(text)
	binary.LittleEndian.PutUint32(text[at:], crc32.Checksum(text[at+4:], castagnoli))
	*buf, v.text = text, text[at+8:]
	_ = wholefile.Write(keptPath(path), text, wholefile.Options{Mode: 0o600, Force: true, Passing: true})
}

// reading is a journal that is read, with the CRC-32C of what was.
type reading struct {
	*os.File
	size  int64
	stamp []byte // see journal.Stamp
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

// Read reads as a file does.
func (j *reading) Read(b []byte) (int, error) {
	n, err := j.File.Read(b)
	j.sum = crc32.Update(j.sum, castagnoli, b[:n])
	return n, cmp.Or(j.all.add(int64(n)), err)
}

// again begins anew.
func (j *reading) again() error {
	_, err := j.Seek(0, io.SeekStart)
	j.sum = 0
	return err
}

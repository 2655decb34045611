package runs

import (
	"bytes"
	"cmp"
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"
	"slices"

	"coldfloor/internal/journal"
)

// keptHead begins kept notes: what they are, and the version of their form, which
// goes up whenever a run is folded in another way or what is made of it is written
// in another way.
const keptHead = "coldfloor review 2\n"

// keepFrom is the least number of bytes of a journal for which notes are kept:
// fewer are read as fast.
const keepFrom = 8 << 10

// What follows the title of kept notes: the journal's stamp with a sum that ties
// it to the next two, their CRC-32C and the journal's.
const (
	stampSize = journal.StampLength + 4
	sumsSize  = 4 + 4
)

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
// were held against it, or else it has the same CRC-32C as far as they go. So
// much of it has passed then. They are in the memory of buf.
func (m maker) kept(path string, j *reading, buf *[]byte) *notes {
	f, err := openKept(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	text, err := readInto(f, 4*j.size, buf)
	if err != nil {
		return nil
	}
	title := m.title()
	text, ok := bytes.CutPrefix(text, title)
	if !ok || len(text) < stampSize+sumsSize {
		return nil
	}
	stamp, sums, body := text[:stampSize], text[stampSize:][:sumsSize], text[stampSize+sumsSize:]
	own, sum := binary.LittleEndian.Uint32(sums), binary.LittleEndian.Uint32(sums[4:])
	if own != crc32.Update(crc32.Checksum(sums[4:], castagnoli), castagnoli, body) {
		return nil
	}
	n, err := decodeNotes(body)
	if err != nil || n.end.At > j.size {
		return nil
	}
	n.text = body
	if j.stamped() && bytes.Equal(stamp, tied(j.stamp, sums)) {
		j.skip(n.end.At, sum)
		return n
	}
	if err := j.pass(n.end.At); err != nil || j.sum != sum {
		return nil
	}
	_, _ = f.WriteAt(tied(j.stamp, sums), int64(len(title)))
	return n
}

// tied returns a stamp as it is kept with those sums. One that is torn, or that
// somebody puts on what somebody else has kept meanwhile, is none.
func tied(stamp, sums []byte) []byte {
	sum := crc32.Update(crc32.Checksum(stamp, castagnoli), castagnoli, sums)
	return binary.LittleEndian.AppendUint32(slices.Clone(stamp), sum)
}

// openKept opens what is kept of a journal, to be stamped too if that may be.
func openKept(path string) (*os.File, error) {
	f, err := openFile(keptPath(path), os.O_RDWR)
	if err != nil {
		return openFile(keptPath(path), os.O_RDONLY)
	}
	return f, nil
}

// openFile opens what is a file or is to be one: a pipe may never open.
func openFile(path string, how int) (*os.File, error) {
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return nil, os.ErrInvalid
	}
	return os.OpenFile(path, how, 0o600)
}

// readInto reads a whole file, of so many bytes at most, into the memory of buf.
func readInto(f *os.File, most int64, buf *[]byte) ([]byte, error) {
	info, err := f.Stat()
	if err != nil || info.Size() > most {
		return nil, cmp.Or(err, os.ErrInvalid)
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
	text := append((*buf)[:0], v.title()...)
	stamp := len(text)
	sums := stamp + stampSize
	text = v.encode(append(text, make([]byte, stampSize+sumsSize)...))
	binary.LittleEndian.PutUint32(text[sums+4:], j.sum)
	binary.LittleEndian.PutUint32(text[sums:], crc32.Checksum(text[sums+4:], castagnoli))
	copy(text[stamp:], tied(j.stamp, text[sums:][:sumsSize]))
	*buf, v.text = text, text[sums+sumsSize:]
	overwrite(keptPath(path), text)
}

// overwrite writes a text over what a file holds, which takes a tenth of the time
// that another file in its place does. A part of it is known by the sum.
func overwrite(path string, text []byte) {
	f, err := openFile(path, os.O_WRONLY|os.O_CREATE)
	if err != nil {
		return
	}
	_, err = f.WriteAt(text, 0)
	if err := errors.Join(err, f.Truncate(int64(len(text))), f.Close()); err != nil {
		_ = os.Remove(path)
	}
}

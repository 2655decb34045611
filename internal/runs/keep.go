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

	"coldfloor/internal/journal"
	"coldfloor/internal/wholefile"
)

// keptHead begins kept notes: what they are, and the version of their form,
// which goes up whenever a run is folded, or what is made of it is written, in
// another way.
const keptHead = "coldfloor review 1\n"

// keepFrom is from how many bytes of a journal on notes are kept of it: less is
// read as fast. keepAgainFrom is from how many more on they are kept again: less
// is read faster than they are written.
const (
	keepFrom      = 8 << 10
	keepAgainFrom = 64 << 10
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
	f, err := openKept(keptPath(path))
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
	sum := u32(sums[4:])
	if j.has(stamp) {
		j.skip(n.end.At, sum)
		return n
	}
	if err := j.pass(n.end.At); err != nil || j.sum != sum {
		return nil
	}
	_, _ = f.WriteAt(j.stamp, int64(len(title))) // one torn is no stamp
	return n
}

// openKept opens kept notes, to be stamped too if that may be. What somebody
// else keeps in their place meanwhile is another file.
func openKept(path string) (*os.File, error) {
	if info, err := os.Stat(path); err != nil || !info.Mode().IsRegular() {
		return nil, cmp.Or(err, os.ErrInvalid) // a pipe may never open
	}
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return os.Open(path)
	}
	return f, nil
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
	text := append(append((*buf)[:0], v.title()...), j.stamp...)
	at := len(text)
	text = binary.LittleEndian.AppendUint32(append(text, 0, 0, 0, 0), j.sum)
	text = v.encode(text)
	binary.LittleEndian.PutUint32(text[at:], crc32.Checksum(text[at+4:], castagnoli))
	*buf, v.text = text, text[at+8:]
	_ = wholefile.Write(keptPath(path), text, wholefile.Options{Mode: 0o600, Force: true, Passing: true})
}

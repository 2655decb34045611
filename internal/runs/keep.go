package runs

import (
	"bytes"
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
// begins with all that they are of, by its length and its CRC-32C. Of the
// journal so much is read then. They are in the memory of buf.
func (m maker) kept(path string, r *summed, size int64, buf *[]byte) *notes {
	text, err := readInto(keptPath(path), buf)
	if err != nil {
		return nil
	}
	text, ok := bytes.CutPrefix(text, m.title())
	if !ok || len(text) < 8 {
		return nil
	}
	sums, body := text[:8], text[8:]
	if binary.LittleEndian.Uint32(sums) != crc32.Checksum(text[4:], castagnoli) {
		return nil
	}
	n, err := decodeNotes(body)
	if err != nil || n.end.At > size {
		return nil
	}
	n.text = body
	if err := r.pass(n.end.At); err != nil || r.sum != binary.LittleEndian.Uint32(sums[4:]) {
		return nil
	}
	return n
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

// keep keeps the notes beside their journal, whose CRC-32C is sum as far as
// they are of it. If they cannot be kept, nothing is lost.
func (v *surveyor) keep(path string, sum uint32, buf *[]byte) {
	if v.end.At < keepFrom {
		return
	}
	text := append((*buf)[:0], v.title()...)
	at := len(text)
	text = binary.LittleEndian.AppendUint32(append(text, 0, 0, 0, 0), sum)
	text = v.encode(text)
	binary.LittleEndian.PutUint32(text[at:], crc32.Checksum(text[at+4:], castagnoli))
	*buf, v.text = text, text[at+8:]
	_ = wholefile.Write(keptPath(path), text, wholefile.Options{Mode: 0o600, Force: true, Passing: true})
}

// summed adds the CRC-32C up of what passes.
type summed struct {
	r   io.Reader
	sum uint32
}

// pass lets so many bytes pass.
func (s *summed) pass(n int64) error {
	buf := buffers.Get().(*[]byte)
	defer buffers.Put(buf)
	*buf = slices.Grow((*buf)[:0], 256<<10)
	for n > 0 {
		k, err := s.Read((*buf)[:min(n, 256<<10)])
		if n -= int64(k); err != nil {
			return err
		}
	}
	return nil
}

// Read reads as its reader does.
func (s *summed) Read(b []byte) (int, error) {
	n, err := s.r.Read(b)
	s.sum = crc32.Update(s.sum, castagnoli, b[:n])
	return n, err
}

package runs

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"io"
	"os"
	"path/filepath"

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
// journal so much is read then.
func (m maker) kept(path string, r *summed, size int64) *notes {
	text, err := os.ReadFile(keptPath(path))
	if err != nil {
		return nil
	}
	text, ok := bytes.CutPrefix(text, m.title())
	if !ok || len(text) < 8 {
		return nil
	}
	sums, body := text[:8], text[8:]
	if binary.LittleEndian.Uint32(sums) != crc32.Update(crc32.Checksum(sums[4:], castagnoli), castagnoli, body) {
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

// keep keeps the notes beside their journal, whose CRC-32C is sum as far as
// they are of it. If they cannot be kept, nothing is lost.
func (v *surveyor) keep(path string, sum uint32) {
	if v.end.At < keepFrom {
		return
	}
	body := v.encode()
	v.text = body
	sums := binary.LittleEndian.AppendUint32(nil, sum)
	text := v.title()
	text = binary.LittleEndian.AppendUint32(text, crc32.Update(crc32.Checksum(sums, castagnoli), castagnoli, body))
	text = append(append(text, sums...), body...)
	_ = wholefile.Write(keptPath(path), text, wholefile.Options{Mode: 0o600, Force: true, Passing: true})
}

// summed adds the CRC-32C up of what passes.
type summed struct {
	r   io.Reader
	sum uint32
}

// pass lets so many bytes pass.
func (s *summed) pass(n int64) error {
	buf := make([]byte, min(n, 256<<10))
	for n > 0 {
		k, err := s.Read(buf[:min(n, int64(len(buf)))])
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

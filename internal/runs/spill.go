package runs

import (
	"bufio"
	"encoding/binary"
	"errors"
	"io"
	"maps"
	"os"
	"slices"

	"coldfloor/internal/compact"
)

// spill is blocks in a temporary file, in the order of their runs' names.
type spill struct {
	f     *os.File
	size  int64
	files int // that the lines may have come in
}

// writeSpill moves blocks of some files to a temporary file. What it holds may be
// private: only the user can read it, and it goes with the process if the system
// allows, else with close.
func writeSpill(dir string, blocks map[string]*block, files int) (*spill, error) {
	f, err := os.CreateTemp(dir, "coldfloor-*.tmp")
	if err != nil {
		return nil, err
	}
	s := &spill{f: f, files: files}
	_ = os.Remove(f.Name()) // if an open file cannot be removed, close does
	w := bufio.NewWriterSize(f, 64<<10)
	var buf []byte
	for _, run := range slices.Sorted(maps.Keys(blocks)) {
		buf = appendBytes(appendBytes(buf[:0], blocks[run].head()), blocks[run].data)
		if _, err := w.Write(buf); err != nil {
			return nil, errors.Join(err, s.close())
		}
		s.size += int64(len(buf))
	}
	if err := w.Flush(); err != nil {
		return nil, errors.Join(err, s.close())
	}
	return s, nil
}

// close gives the file up.
func (s *spill) close() error {
	err := s.f.Close()
	if rerr := os.Remove(s.f.Name()); rerr != nil && !os.IsNotExist(rerr) {
		err = errors.Join(err, rerr)
	}
	return err
}

// read returns the blocks from the first on; with headsAlone without their lines.
func (s *spill) read(headsAlone bool) source {
	r := &spillReader{bufio.NewReaderSize(io.NewSectionReader(s.f, 0, s.size), 16<<10), s.size} // there may be many at once
	return func() (*block, error) {
		if r.left == 0 {
			return nil, nil
		}
		head, err := r.bytes()
		if err != nil {
			return nil, err
		}
		b, err := blockOf(head, s.files)
		if err != nil {
			return nil, err
		}
		if headsAlone {
			return b, r.pass()
		}
		b.data, err = r.bytes()
		return b, err
	}
}

// spillReader reads a spill, of which so many bytes are left.
type spillReader struct {
	r    *bufio.Reader
	left int64
}

// bytes reads what appendBytes wrote.
func (r *spillReader) bytes() ([]byte, error) {
	n, err := r.length()
	if err != nil {
		return nil, err
	}
	b := make([]byte, n)
	_, err = io.ReadFull(r.r, b)
	return b, whole(err)
}

// pass passes over it.
func (r *spillReader) pass() error {
	n, err := r.length()
	if err != nil {
		return err
	}
	_, err = r.r.Discard(n)
	return whole(err)
}

// length reads how many bytes of it follow.
func (r *spillReader) length() (int, error) {
	n, err := binary.ReadUvarint(r)
	if err != nil {
		return 0, whole(err)
	}
	if n > uint64(max(0, r.left)) {
		return 0, errShort
	}
	r.left -= int64(n)
	return int(n), nil
}

// ReadByte reads a byte of a length.
func (r *spillReader) ReadByte() (byte, error) {
	r.left--
	return r.r.ReadByte()
}

// whole returns what an error of reading says of the file: one that ends too
// early is damaged.
func whole(err error) error {
	if err == io.EOF || err == io.ErrUnexpectedEOF {
		return errShort
	}
	return err
}

// head codes all of a block but its lines.
func (b *block) head() []byte {
	var c codec
	b.code(&c)
	return c.Buf
}

// blockOf decodes the head of a block whose lines came in some of so many files.
func blockOf(head []byte, files int) (*block, error) {
	c := codec{Coder: compact.Coder{Reading: true, Buf: head}}
	b := &block{}
	b.code(&c)
	known := func(f int) bool { return 0 <= f && f < files }
	if c.Err != nil || len(b.files) == 0 || !slices.IsSorted(b.files) || !known(b.files[0]) || !known(b.files[len(b.files)-1]) {
		return nil, errShort
	}
	return b, nil
}

func (b *block) code(c *codec) {
	c.String(&b.run)
	c.String(&b.player)
	compact.List(&c.Coder, &b.files, c.Int)
}

func appendBytes(to, b []byte) []byte {
	return append(binary.AppendUvarint(to, uint64(len(b))), b...)
}

// cutBytes returns what appendBytes put at the front of from, and what follows;
// nil if it is cut short.
func cutBytes(from []byte) (b, rest []byte) {
	n, k := binary.Uvarint(from)
	if k <= 0 || n > uint64(len(from)-k) {
		return nil, nil
	}
	return from[k : k+int(n) : k+int(n)], from[k+int(n):]
}

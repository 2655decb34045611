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
type spill struct{ f *os.File }

// writeSpill moves blocks to a temporary file. What it holds may be private:
// only the user can read it, and it goes with the process if the system
// allows, else with close.
func writeSpill(dir string, blocks map[string]*block) (*spill, error) {
	f, err := os.CreateTemp(dir, "coldfloor-*.tmp")
	if err != nil {
		return nil, err
	}
	s := &spill{f}
	_ = os.Remove(f.Name()) // if an open file cannot be removed, close does
	w := bufio.NewWriterSize(f, 64<<10)
	var buf []byte
	for _, run := range slices.Sorted(maps.Keys(blocks)) {
		buf = appendBytes(appendBytes(buf[:0], blocks[run].head()), blocks[run].data)
		if _, err := w.Write(buf); err != nil {
			return nil, errors.Join(err, s.close())
		}
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
	r := bufio.NewReaderSize(io.NewSectionReader(s.f, 0, 1<<62), 16<<10) // there may be many at once
	var head []byte
	return func() (*block, error) {
		n, err := binary.ReadUvarint(r)
		if err == io.EOF {
			return nil, nil
		}
		if err != nil {
			return nil, err
		}
		head = slices.Grow(head[:0], int(n))[:n]
		if _, err := io.ReadFull(r, head); err != nil {
			return nil, err
		}
		b, err := blockOf(head)
		if err != nil {
			return nil, err
		}
		if n, err = binary.ReadUvarint(r); err != nil {
			return nil, err
		}
		if headsAlone {
			_, err = r.Discard(int(n))
			return b, err
		}
		b.data = make([]byte, n)
		_, err = io.ReadFull(r, b.data)
		return b, err
	}
}

// head codes all of a block but its lines.
func (b *block) head() []byte {
	var c codec
	b.code(&c)
	return c.Buf
}

// blockOf decodes the head of a block.
func blockOf(head []byte) (*block, error) {
	c := codec{Coder: compact.Coder{Reading: true, Buf: head}}
	b := &block{}
	b.code(&c)
	return b, c.Err
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

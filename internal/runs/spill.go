package runs

import (
	"coldfloor/internal/compact"

	"bufio"
	"encoding/binary"
	"errors"
	"io"
	"maps"
	"os"
	"slices"
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
		buf = blocks[run].append(buf[:0])
		if _, err := w.Write(appendBytes(nil, buf)); err != nil {
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

// read returns the blocks from the first on.
func (s *spill) read() source {
	r := bufio.NewReaderSize(io.NewSectionReader(s.f, 0, 1<<62), 16<<10) // there may be many at once
	return func() (*block, error) {
		n, err := binary.ReadUvarint(r)
		if err == io.EOF {
			return nil, nil
		}
		if err != nil {
			return nil, err
		}
		buf := make([]byte, n)
		if _, err := io.ReadFull(r, buf); err != nil {
			return nil, err
		}
		return blockOf(buf)
	}
}

// append codes a block.
func (b *block) append(buf []byte) []byte {
	c := codec{compact.Coder{Buf: buf}}
	c.String(&b.run)
	c.String(&b.player)
	compact.List(&c.Coder, &b.files, c.Int)
	return append(c.Buf, b.data...)
}

// blockOf decodes a block, whose data stay in buf.
func blockOf(buf []byte) (*block, error) {
	c := codec{compact.Coder{Reading: true, Buf: buf}}
	b := &block{}
	c.String(&b.run)
	c.String(&b.player)
	compact.List(&c.Coder, &b.files, c.Int)
	b.data = c.Buf
	return b, c.Err
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

package runs

import (
	"errors"
	"os"
	"slices"
	"sync"

	"coldfloor/internal/fault"
)

// store holds texts: in memory up to a bound, and beyond it in one temporary
// file that only the user can read. It is safe for concurrent use.
type store struct {
	bound int
	dir   string // of the temporary file; empty: the system's

	mu   sync.Mutex
	held int
	f    *os.File
	end  int64
}

// stored is a text in a store.
type stored struct {
	text     []byte // nil: it is in the file
	at, size int64
}

// put takes a text, which is not changed any more.
func (s *store) put(text []byte) (stored, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.held+len(text) <= s.bound {
		s.held += len(text)
		return stored{text: append([]byte{}, text...)}, nil
	}
	if s.f == nil {
		f, err := os.CreateTemp(s.dir, "coldfloor-*.tmp")
		if err != nil {
			return stored{}, noRoom(err)
		}
		_ = os.Remove(f.Name()) // if an open file cannot be removed, close does
		s.f = f
	}
	x := stored{at: s.end, size: int64(len(text))}
	if _, err := s.f.WriteAt(text, x.at); err != nil {
		return stored{}, noRoom(err)
	}
	s.end += x.size
	return x, nil
}

// get returns a text, read into the memory of into if it is in the file.
func (s *store) get(x stored, into []byte) ([]byte, error) {
	if x.text != nil || x.size == 0 {
		return x.text, nil
	}
	text := slices.Grow(into[:0], int(x.size))[:x.size]
	_, err := s.f.ReadAt(text, x.at)
	return text, err
}

// buffers is memory that is used again, for one journal after the other.
var buffers = sync.Pool{New: func() any { return new([]byte) }}

// close gives the file up.
func (s *store) close() error {
	if s.f == nil {
		return nil
	}
	err := s.f.Close()
	if rerr := os.Remove(s.f.Name()); rerr != nil && !os.IsNotExist(rerr) {
		err = errors.Join(err, rerr)
	}
	s.f = nil
	return err
}

func noRoom(err error) error {
	return fault.New("free some room, or name another folder in TMPDIR", "cannot keep what was read in a temporary file: %w", err)
}

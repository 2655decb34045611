package export

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"coldfloor/internal/fault"
)

// ErrForeign is returned where a file that is no table of the same kind stands
// in the way.
var ErrForeign = errors.New("it is no such table; nothing was written")

// Files are tables on their way to files: none of them is there, or replaced,
// before all are whole.
type Files struct {
	pending []pending
}

type pending struct {
	path string
	f    *os.File
	w    *bufio.Writer
}

// Add opens a table's file. One that stands in its place is replaced where it
// begins like the same table, and otherwise with force alone; it is never
// replaced where it is among keep.
func (fs *Files) Add(path string, t Table, format Format, force bool, keep []string) (io.Writer, error) {
	if err := replaceable(path, t, format, force, keep); err != nil {
		return nil, err
	}
	// A table can tell of pain: only the user can read it, as the journal.
	f, err := os.CreateTemp(filepath.Dir(path), ".coldfloor-*.tmp")
	if err != nil {
		return nil, fmt.Errorf("cannot write %s: %w", path, err)
	}
	p := pending{path, f, bufio.NewWriterSize(f, 64<<10)}
	fs.pending = append(fs.pending, p)
	return p.w, nil
}

// Commit puts every file in its place.
func (fs *Files) Commit() error {
	for _, p := range fs.pending {
		if err := errors.Join(p.w.Flush(), p.f.Sync(), p.f.Close()); err != nil {
			return fmt.Errorf("cannot write %s: %w", p.path, err)
		}
	}
	for _, p := range fs.pending {
		if err := os.Rename(p.f.Name(), p.path); err != nil {
			return fmt.Errorf("cannot write %s: %w", p.path, err)
		}
	}
	fs.pending = nil
	return nil
}

// Discard gives up what was not committed. It may follow Commit.
func (fs *Files) Discard() {
	for _, p := range fs.pending {
		p.f.Close()
		os.Remove(p.f.Name())
	}
	fs.pending = nil
}

// replaceable reports why a file may not be written at path.
func replaceable(path string, t Table, format Format, force bool, keep []string) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", path, err)
	}
	for _, k := range keep {
		if other, err := os.Stat(k); err == nil && os.SameFile(info, other) {
			return fault.New("name another file with -o", "%s is a journal that is read, it cannot be written over", path)
		}
	}
	switch {
	case info.IsDir():
		return fmt.Errorf("%s is a folder", path)
	case force || info.Size() == 0 || beginsAs(path, t, format):
		return nil
	}
	return fault.New("name another file, or add --force to replace it", "%s is there already: %w", path, ErrForeign)
}

// beginsAs reports whether the file at path begins as the table does.
func beginsAs(path string, t Table, format Format) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	var want []byte
	switch columns := Columns(t); format {
	case CSV:
		var header bytes.Buffer
		if s, err := newCSV(&header, columns, false); err == nil && s.close() == nil {
			want = header.Bytes()
		}
	case JSONL:
		want = []byte(`{"` + columns[0].Name + `":`)
	case Parquet:
		want = []byte("PAR1")
	}
	got := make([]byte, len(want))
	_, err = io.ReadFull(f, got)
	return err == nil && bytes.Equal(got, want)
}

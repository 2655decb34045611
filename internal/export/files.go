package export

import (
	"bufio"
	"bytes"
	"io"

	"coldfloor/internal/wholefile"
)

// Files are tables on their way to files: none of them is there, or replaced,
// before all are whole.
type Files struct {
	batch   wholefile.Batch
	writers []*bufio.Writer
}

// Add opens a table's file. One that stands in its place is replaced if it
// begins like the same table, and otherwise by force alone; it is never
// replaced if it is among inputs. A table can hold reports of pain: only the user can
// read it, as the journal.
func (fs *Files) Add(path string, t Table, format Format, force bool, inputs []string) (io.Writer, error) {
	kind := &wholefile.Kind{Name: "such a table", Begins: beginning(t, format), Empty: true}
	f, err := fs.batch.Create(path, wholefile.Options{Mode: 0o600, Force: force, Inputs: inputs, Ours: kind})
	if err != nil {
		return nil, err
	}
	w := bufio.NewWriterSize(f, 64<<10)
	fs.writers = append(fs.writers, w)
	return w, nil
}

// Commit puts every file in its place, or none.
func (fs *Files) Commit() error {
	for _, w := range fs.writers {
		if err := w.Flush(); err != nil {
			return err
		}
	}
	return fs.batch.Commit()
}

// Discard gives up what was not committed. It may follow Commit.
func (fs *Files) Discard() { fs.batch.Discard() }

// beginning returns what a file of the table in the format begins with.
func beginning(t Table, format Format) []byte {
	switch columns := Columns(t); format {
	case CSV:
		var header bytes.Buffer
		if s, err := newCSV(&header, columns, false); err == nil && s.close() == nil {
			return header.Bytes()
		}
	case JSONL:
		return []byte(`{"` + columns[0].Name + `":`)
	case Parquet:
		return []byte("PAR1")
	}
	return nil
}

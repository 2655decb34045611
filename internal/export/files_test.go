package export

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"testing"

	"coldfloor/internal/wholefile"
)

func TestFiles(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "rests.csv")
	write := func(force bool, keep ...string) error {
		var files Files
		defer files.Discard()
		w, err := files.Add(path, Rests, CSV, force, keep)
		if err != nil {
			return err
		}
		e, err := New(Options{Format: CSV}, map[Table]io.Writer{Rests: w})
		if err != nil {
			return err
		}
		return errors.Join(e.Close(), files.Commit())
	}
	for range 2 { // a table replaces a table
		if err := write(false); err != nil {
			t.Fatal(err)
		}
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm()&0o077 != 0 {
		t.Errorf("written as %v, %v", info.Mode(), err)
	}
	if err := os.WriteFile(path, []byte("my own notes\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := write(false); !errors.Is(err, wholefile.ErrThere) {
		t.Errorf("over other text: %v", err)
	}
	if err := write(true, path); err == nil || !errors.Is(err, wholefile.ErrInput) {
		t.Errorf("over a journal: %v", err)
	}
	if text, _ := os.ReadFile(path); string(text) != "my own notes\n" {
		t.Errorf("the file holds %q", text)
	}
	if err := write(true); err != nil {
		t.Errorf("by force: %v", err)
	}
	if left, _ := filepath.Glob(filepath.Join(dir, ".coldfloor*")); len(left) > 0 {
		t.Errorf("left over: %v", left)
	}
}

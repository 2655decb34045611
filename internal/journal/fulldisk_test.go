package journal

import (
	"errors"
	"io/fs"
	"os"
	"strings"
	"syscall"
	"testing"

	"coldfloor/internal/fault"
)

// fullDisk is a file on a disk with so much room; a write that does not fit
// leaves its first part.
type fullDisk struct {
	*os.File
	room int
}

var errFull = errors.New("no space left on device")

func (f *fullDisk) Write(b []byte) (int, error) {
	if len(b) <= f.room {
		f.room -= len(b)
		return f.File.Write(b)
	}
	n, _ := f.File.Write(b[:f.room])
	f.room = 0
	return n, errFull
}

func TestAppendToAFullDisk(t *testing.T) {
	j := openTemp(t)
	f, err := j.open()
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	disk := &fullDisk{f, 300}
	lines := []Line{paused("A", 1), paused("A", 2), paused("A", 3)}
	if err := appendTo(disk, lines, false); !errors.Is(err, errFull) {
		t.Fatalf("%v", err)
	}
	if got, damage := readAll(t, []byte(contents(t, j))); len(got) == 0 || len(got) == 3 || len(damage) != 0 {
		t.Errorf("%d lines, damage %v: the part that was written is not taken back", len(got), damage)
	}
	disk.room = 10_000
	if err := appendTo(disk, lines, false); err != nil {
		t.Fatal(err)
	}
	if r := only(t, j); r.Pauses != 3 || r.LastN != 3 {
		t.Errorf("%+v", r)
	}
}

// TestFullDiskIsSaid: one sentence that names the journal once, and what helps
// on a full disk.
func TestFullDiskIsSaid(t *testing.T) {
	err := unwritable("/disk/journal.jsonl", &fs.PathError{Op: "write", Path: "/disk/journal.jsonl", Err: syscall.ENOSPC})
	if got, want := err.Error(), "cannot write the journal /disk/journal.jsonl: "+syscall.ENOSPC.Error(); got != want {
		t.Errorf("says %q, want %q", got, want)
	}
	if !errors.Is(err, syscall.ENOSPC) || !strings.Contains(fault.Hint(err), "free some room") {
		t.Errorf("%v, hint %q", err, fault.Hint(err))
	}
}

// Lines that say nothing without each other are written all, or none.
func TestAppendWholeToAFullDisk(t *testing.T) {
	j := openTemp(t)
	f, err := j.open()
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	disk := &fullDisk{f, 300}
	lines := []Line{paused("A", 1), paused("A", 2), paused("A", 3)}
	if err := appendTo(disk, lines, true); !errors.Is(err, errFull) || contents(t, j) != "" {
		t.Fatalf("%v, and %q is left", err, contents(t, j))
	}
	disk.room = 10_000
	if err := appendTo(disk, lines, true); err != nil {
		t.Fatal(err)
	}
	if r := only(t, j); r.Pauses != 3 || r.LastN != 3 {
		t.Errorf("%+v", r)
	}
}

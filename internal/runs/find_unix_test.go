//go:build unix

package runs

import (
	"os"
	"path/filepath"
	"reflect"
	"syscall"
	"testing"
)

// A folder may hold what is no journal: it is told, the rest is read, and
// nothing waits for what never comes.
func TestWhatIsNoFile(t *testing.T) {
	dir := folder(t, map[string][]string{"a.jsonl": made(t, "Ana", 2, 1), "locked/b.jsonl": made(t, "Bea", 2, 2)})
	for name, err := range map[string]error{
		"pipe":   syscall.Mkfifo(filepath.Join(dir, "pipe.jsonl"), 0o600),
		"device": os.Symlink("/dev/zero", filepath.Join(dir, "device.jsonl")),
		"loose":  os.Symlink("nowhere", filepath.Join(dir, "loose.jsonl")),
		"locked": os.Chmod(filepath.Join(dir, "locked"), 0),
	} {
		if err != nil {
			t.Fatal(name, err)
		}
	}
	defer os.Chmod(filepath.Join(dir, "locked"), 0o700)
	got, p := gather(t, Options{}, dir)
	told := map[string]string{}
	for _, f := range p.Files {
		if f.Err != nil {
			told[filepath.Base(f.Path)] = f.Err.Error()
		}
	}
	want := map[string]string{"pipe.jsonl": "it is a pipe, and only a file can be a journal",
		"device.jsonl": "it is a device, and only a file can be a journal", "loose.jsonl": "no such file or directory"}
	runs := 2
	if os.Getuid() == 0 { // who may read everything
		runs = 4
	} else {
		want["locked"] = "permission denied"
	}
	if len(got) != runs || !reflect.DeepEqual(told, want) {
		t.Errorf("%d runs, told %q", len(got), told)
	}
	if _, p := gather(t, Options{}, filepath.Join(dir, "pipe.jsonl")); len(p.Files) != 1 || p.Files[0].Err == nil {
		t.Errorf("a pipe given by name: %+v", p.Files)
	}
}

// What goes to temporary files has no name by the time that anything is in it:
// a process that is stopped, however it is, leaves nothing behind.
func TestNothingIsLeftBehind(t *testing.T) {
	temp := t.TempDir()
	dir := folder(t, map[string][]string{"a.jsonl": made(t, "Ana", 40, 1), "b.jsonl": made(t, "Bea", 40, 2)})
	p, err := Gather([]string{dir}, Options{Bound: 4000, TempDir: temp, Progress: func(int64, int64) { nothingIn(t, temp) }})
	if err != nil {
		t.Fatal(err)
	}
	defer p.Close()
	if p.InMemory() {
		t.Fatal("nothing went to a file")
	}
	if err := p.Each(func(Run) error { nothingIn(t, temp); return nil }); err != nil {
		t.Fatal(err)
	}
}

func nothingIn(t *testing.T, dir string) {
	t.Helper()
	// One that is being made this moment may be seen, and is empty.
	files, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		if info, err := f.Info(); err == nil && info.Size() > 0 {
			t.Errorf("%s is left, with %d bytes", f.Name(), info.Size())
		}
	}
}

// Nothing waits for a pipe that stands where notes are kept.
func TestKeptIsAPipe(t *testing.T) {
	dir := club(t, 1, 6)
	want := told(t, dir, briefly("a"), Options{})
	forgetIn(t, dir)
	if err := syscall.Mkfifo(keptPath(filepath.Join(dir, "player-001.jsonl")), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := told(t, dir, briefly("a"), Options{}); !reflect.DeepEqual(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
}

package weeks

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/internal/fault"
	"coldfloor/internal/yamlread"
)

// TestOpen opens sessions by name and by path, and says what is wrong with what
// cannot be opened.
func TestOpen(t *testing.T) {
	dir := t.TempDir()
	t.Chdir(dir)
	write := func(name, src string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(src), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	least := "coldfloor: 1\ntitle: Mine\nblocks: [{title: B, exercises: [{name: E, reps: 1}]}]\n"
	write("mine.yaml", least)
	write("mine", least)
	write("first-hops", least)
	write("wrong.yaml", "title: Mine\n")
	write("large.yaml", strings.Repeat("# large\n", yamlread.MaxBytes))
	for name, want := range map[string]string{
		"mine.yaml": "Mine", "./mine.yaml": "Mine", "mine": "Mine", filepath.Join(dir, "mine"): "Mine",
		"first-hops": "First hops", "./first-hops": "Mine", // a name is a built-in session, a path is a file
	} {
		if o, err := Open(name); err != nil || o.Session == nil || o.Session.Title != want || o.Session.Name != name {
			t.Errorf("Open(%q) = %+v, %v; want %s", name, o.Session, err, want)
		}
	}
	for name, want := range map[string]string{
		"frist-hops":    "there is no session or plan called \"frist-hops\"\nhint: did you mean first-hops?",
		"hallwaypower":  "there is no session or plan called \"hallwaypower\"\nhint: did you mean hallway-power?",
		"rowing":        "there is no session or plan called \"rowing\"\nhint: coldfloor sessions lists those",
		"":              "there is no session or plan called \"\"\nhint: ",
		"min.yaml":      "there is no file \"min.yaml\"\nhint: did you mean mine.yaml?",
		"no/such":       "there is no file \"no/such\"\nhint: ",
		dir:             "is a folder, not a file\nhint: ",
		"wrong.yaml":    "wrong.yaml:1:1: \"coldfloor\" is missing",
		"large.yaml":    "large.yaml:1:1: the file is larger than 1 MiB",
		"bad\x1b[name":  "there is no session or plan called \"bad\\x1b[name\"",
		"a\x00b":        "", // the system has its own words
		"mine.yaml/sub": "",
	} {
		o, err := Open(name)
		if o.Session != nil || err == nil || !strings.Contains(fault.Text(err), want) {
			t.Errorf("Open(%q) = %v, %v; want %q", name, o.Session, err, want)
		}
		var problems yamlread.Problems
		if isFile := strings.HasPrefix(name, "wrong") || strings.HasPrefix(name, "large"); errors.As(err, &problems) != isFile {
			t.Errorf("Open(%q): the error is a %T", name, err)
		}
	}
}

// endless is a reader that never ends.
type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) { e.read += len(p); clear(p); return len(p), nil }

func TestReadTakesNoMoreThanItCanUse(t *testing.T) {
	var e endless
	if _, err := Read("pipe", ".", &e); err == nil || !strings.Contains(err.Error(), "larger than 1 MiB") {
		t.Errorf("Read = %v", err)
	}
	if e.read > 2*yamlread.MaxBytes {
		t.Errorf("%d bytes were read", e.read)
	}
}

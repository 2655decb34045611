package sessions

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/internal/fault"
	"coldfloor/internal/yamlread"
)

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
		if s, err := Open(name); err != nil || s.Title != want || s.Name != name {
			t.Errorf("Open(%q) = %+v, %v; want %s", name, s, err, want)
		}
	}
	for name, want := range map[string]string{
		"frist-hops":    "there is no session called \"frist-hops\"\nhint: did you mean first-hops?",
		"hallwaypower":  "there is no session called \"hallwaypower\"\nhint: did you mean hallway-power?",
		"rowing":        "there is no session called \"rowing\"\nhint: coldfloor sessions lists those",
		"":              "there is no session called \"\"\nhint: ",
		"min.yaml":      "there is no file \"min.yaml\"\nhint: ",
		"no/such":       "there is no file \"no/such\"\nhint: ",
		dir:             "is a folder, not a file\nhint: ",
		"wrong.yaml":    "wrong.yaml:1:1: \"coldfloor\" is missing",
		"large.yaml":    "large.yaml:1:1: the file is larger than 1 MiB",
		"bad\x1b[name":  "there is no session called \"bad\\x1b[name\"",
		"a\x00b":        "", // the system has its own words
		"mine.yaml/sub": "",
	} {
		s, err := Open(name)
		if s != nil || err == nil || !strings.Contains(fault.Text(err), want) {
			t.Errorf("Open(%q) = %v, %v; want %q", name, s, err, want)
		}
		var problems yamlread.Problems
		if isFile := strings.HasPrefix(name, "wrong") || strings.HasPrefix(name, "large"); errors.As(err, &problems) != isFile {
			t.Errorf("Open(%q): the error is a %T", name, err)
		}
	}
}

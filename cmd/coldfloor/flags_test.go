package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/adrg/xdg"
	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// wrong is a value that a text flag does not take. Flags that are not here take
// any text, or name a file or a folder.
var wrong = map[string]string{
	"distance": "far", "clicks": "loud", "background": "pink", "language": "xx", "paper": "a9", "sort": "nonsense",
	"alarm": "soon", "on": "someday", "within": "long", "room": "big", "seed": "seven", "voice": "xx", "since": "someday",
	"date": "someday", "length": "long", "rounds": "many", "rpe": "eleven", "pain-level": "eleven", "columns": "maybe",
}

// wrongFor returns a value that the flag does not take, and false if there is
// none available.
func wrongFor(f *pflag.Flag) (string, bool) {
	switch f.Value.Type() {
	case "bool":
		return "maybe", true
	case "string", "stringArray", "stringSlice":
		v, ok := wrong[f.Name]
		return v, ok
	}
	return "x", true
}

// needs are the arguments without which a command does not look at its flags.
var needs = map[string][]string{
	"calendar": {"off-season-six-weeks", "-o", "c.ics"}, "handout": {"off-season-six-weeks", "-o", "out", "--week", "1"},
	"next": {"off-season-six-weeks", "j.jsonl", "--week", "2"}, "preview": {"off-season-six-weeks"}, "check": {"off-season-six-weeks"}, "run": {"off-season-six-weeks", "--plain"},
	"sheet": {"off-season-six-weeks", "-o", "s.pdf"}, "track": {"off-season-six-weeks", "-o", "s.flac"}, "export": {"j.jsonl", "-o", "tables"},
	"review": {"j.jsonl"}, "rate": {"last"}, "add": {"ten-minutes"}, "edit": {"last"}, "show": {"last"}, "delete": {"last"},
	"sessions show": {"off-season-six-weeks"}, "measure": {"last"}, "close": {"last"}, "copy": {"-o", "copy.jsonl"}, "sounds": {}, "new": {"n.yaml"},
}

// TestEveryFlagWithAWrongValue: a wrong value of any flag of any command is
// wrong usage, said in one line with a hint, and nothing is printed or written.
func TestEveryFlagWithAWrongValue(t *testing.T) {
	dir := ownFolders(t)
	t.Chdir(dir)
	for _, more := range [][]string{nil, {"--journal", "j.jsonl"}} {
		add := append([]string{"log", "add", "ten-minutes", "--date", "2026-11-02", "--all"}, more...)
		if code := execute(add, strings.NewReader(""), &bytes.Buffer{}, &bytes.Buffer{}); code != 0 {
			t.Fatal("no journal to try with")
		}
	}
	before := listing(t, dir)
	tried := 0
	each(newRoot(), func(c *cobra.Command) {
		c.InitDefaultHelpFlag()
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			value, ok := wrongFor(f)
			if !ok {
				return
			}
			tried++
			args := append(strings.Fields(c.CommandPath())[1:], argsFor(c)...)
			args = append(args, "--"+f.Name+"="+value)
			var out, errs bytes.Buffer
			code := execute(args, strings.NewReader(""), &out, &errs)
			said := errs.String()
			if code != exitUsage || out.Len() > 0 || !strings.HasPrefix(said, "coldfloor: ") || !strings.Contains(said, "\nhint: ") || strings.Count(said, "\n") != 2 {
				t.Errorf("%s: code %d\n%s%s", strings.Join(args, " "), code, &out, said)
			}
			if after := listing(t, dir); after != before {
				t.Fatalf("%s: there is now\n%s", strings.Join(args, " "), after)
			}
		})
	})
	t.Logf("%d flags tried", tried)
}

// ownFolders keeps a test that calls the commands in its own process away from
// the journal and the settings of whoever runs it, and returns their folder.
func ownFolders(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	t.Cleanup(xdg.Reload) // after Setenv has put the variables back
	for _, name := range []string{"HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME"} {
		t.Setenv(name, dir)
	}
	xdg.Reload()
	return dir
}

// argsFor returns the arguments that a command needs.
func argsFor(c *cobra.Command) []string {
	path := strings.TrimPrefix(c.CommandPath(), "coldfloor ")
	if args, ok := needs[path]; ok {
		return args
	}
	return needs[c.Name()]
}

// each calls f with a command and all below it.
func each(c *cobra.Command, f func(*cobra.Command)) {
	f(c)
	for _, sub := range c.Commands() {
		each(sub, f)
	}
}

// listing lists all files below a folder.
func listing(t *testing.T, dir string) string {
	t.Helper()
	var names []string
	err := filepath.WalkDir(dir, func(path string, _ os.DirEntry, err error) error {
		names = append(names, path)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(names, "\n")
}

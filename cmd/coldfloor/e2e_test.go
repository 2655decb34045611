//go:build e2e

package main

import (
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
)

// binary builds the command once, as a user would have it, and returns its
// path.
var binary = sync.OnceValue(func() string {
	dir, err := os.MkdirTemp("", "coldfloor-e2e")
	if err != nil {
		panic(err)
	}
	path := filepath.Join(dir, "coldfloor")
	c := exec.Command("go", "build", "-o", path, ".")
	c.Env = append(os.Environ(), "CGO_ENABLED=0")
	if out, err := c.CombinedOutput(); err != nil {
		panic(string(out))
	}
	return path
})

// home is an empty home of a user, with a session in it.
type home struct {
	t    *testing.T
	dir  string
	file string // the session
}

func newHome(t *testing.T, session string) home {
	t.Helper()
	h := home{t: t, dir: t.TempDir()}
	h.file = filepath.Join(h.dir, "session.yaml")
	if err := os.WriteFile(h.file, []byte(session), 0o644); err != nil {
		t.Fatal(err)
	}
	return h
}

// cautionsRead makes this a home whose player has read the cautions before a
// first session.
func (h home) cautionsRead() {
	h.t.Helper()
	file := filepath.Join(h.dir, ".local/state/coldfloor/cautions-read")
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		h.t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte("\"\"\n"), 0o600); err != nil {
		h.t.Fatal(err)
	}
}

// env is the environment of a terminal at home, with no sound server but the
// one that more names.
func (h home) env(more ...string) []string {
	return append([]string{
		"-i", "HOME=" + h.dir, "PATH=" + os.Getenv("PATH"), "TERM=tmux-256color", "LANG=C.UTF-8", "COLORTERM=truecolor",
		"XDG_RUNTIME_DIR=" + h.dir,
	}, more...)
}

// coldfloor runs the command at home and returns its output.
func (h home) coldfloor(args ...string) []byte {
	h.t.Helper()
	c := exec.Command(binary(), args...)
	c.Env = append(os.Environ(), "HOME="+h.dir, "XDG_DATA_HOME=", "XDG_CONFIG_HOME=")
	var stderr strings.Builder
	c.Stderr = &stderr
	out, err := c.Output()
	if err != nil {
		h.t.Fatalf("coldfloor %v: %v\n%s%s", args, err, out, stderr.String())
	}
	return out
}

// runs reads the journal back with the project's own reader.
func (h home) runs() []*journal.Run {
	h.t.Helper()
	runs, _, err := journaltest.Load(filepath.Join(h.dir, ".local/share/coldfloor/journal.jsonl"))
	if err != nil {
		h.t.Fatal(err)
	}
	return runs
}

// logged is the part of `log show --json` that the tests read.
type logged struct {
	Title string `json:"title"`
	State string `json:"state"`
}

func (h home) last() (l logged) {
	h.t.Helper()
	if err := json.Unmarshal(h.coldfloor("log", "show", "last", "--json"), &l); err != nil {
		h.t.Fatal(err)
	}
	return l
}

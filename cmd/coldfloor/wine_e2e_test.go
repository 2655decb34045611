//go:build e2e

package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/tmuxtest"
)

// prng is the one function that Go's runtime asks of Windows and Wine 8 lacks.
const prng = `#include <windows.h>
#include <ntsecapi.h>
BOOL WINAPI ProcessPrng(PBYTE data, SIZE_T length) { return RtlGenRandom(data, (ULONG)length); }
`

// windows is the program built for Windows, in an empty Windows of Wine's.
type windows struct {
	t   *testing.T
	dir string // the working folder
	env []string
	exe string
}

// newWindows builds the program for Windows and sets up a prefix. It skips the
// test if Wine or the compiler is not installed.
func newWindows(t *testing.T) windows {
	t.Helper()
	for _, need := range []string{"wine", "x86_64-w64-mingw32-gcc"} {
		if _, err := exec.LookPath(need); err != nil {
			t.Skip(need + " is not installed")
		}
	}
	root := t.TempDir()
	w := windows{t: t, dir: filepath.Join(root, "work folder"), exe: filepath.Join(root, "coldfloor.exe")}
	prefix := filepath.Join(root, "prefix")
	w.env = append(os.Environ(), "HOME="+root, "WINEPREFIX="+prefix, "WINEDEBUG=-all", "WINEDLLOVERRIDES=mscoree,mshtml=")
	if err := os.Mkdir(w.dir, 0o755); err != nil {
		t.Fatal(err)
	}
	w.write("prng.c", prng)
	w.write("session.yaml", brief)
	w.must(exec.Command("wineboot", "--init"))
	w.must(exec.Command("x86_64-w64-mingw32-gcc", "-shared", "-o", filepath.Join(prefix, "drive_c/windows/system32/bcryptprimitives.dll"), "prng.c", "-ladvapi32"))
	build := exec.Command("go", "build", "-o", w.exe, ".")
	build.Env = append(os.Environ(), "CGO_ENABLED=0", "GOOS=windows", "GOARCH=amd64")
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	t.Cleanup(func() { _ = w.command("wineserver", "-k").Run() })
	return w
}

func (w windows) write(name, text string) {
	w.t.Helper()
	if err := os.WriteFile(filepath.Join(w.dir, name), []byte(text), 0o644); err != nil {
		w.t.Fatal(err)
	}
}

func (w windows) command(name string, args ...string) *exec.Cmd {
	c := exec.Command(name, args...)
	c.Dir, c.Env = w.dir, w.env
	return c
}

// must runs a command that has to succeed.
func (w windows) must(c *exec.Cmd) {
	w.t.Helper()
	c.Dir, c.Env = w.dir, w.env
	if out, err := c.CombinedOutput(); err != nil {
		w.t.Fatalf("%v: %v\n%s", c.Args, err, out)
	}
}

// coldfloor runs the program, which has to end with code, and returns what it
// printed on standard output.
func (w windows) coldfloor(code int, args ...string) string {
	w.t.Helper()
	ctx, cancel := context.WithTimeout(w.t.Context(), time.Minute) // a bound on a hang alone
	defer cancel()
	c := exec.CommandContext(ctx, "wine", append([]string{w.exe}, args...)...)
	c.Dir, c.Env, c.WaitDelay = w.dir, w.env, time.Second
	var out, errs bytes.Buffer
	c.Stdout, c.Stderr = &out, &errs
	_ = c.Run()
	if got := c.ProcessState.ExitCode(); got != code {
		w.t.Fatalf("coldfloor %v: exit code %d, want %d\n%s%s", args, got, code, &out, &errs)
	}
	return out.String()
}

// runs reads the journal back.
func (w windows) runs() []*journal.Run {
	w.t.Helper()
	runs, problems, err := journaltest.Load(filepath.Join(w.dir, "j.jsonl"))
	if err != nil || len(problems) > 0 {
		w.t.Fatal(err, problems)
	}
	return runs
}

// TestWindows goes the whole way of a session with the Windows build: read,
// written out, run, logged, reviewed and exported.
func TestWindows(t *testing.T) {
	w := newWindows(t)
	if out := w.coldfloor(0, "preview", "session.yaml", "--json"); !strings.Contains(out, `"total_s": 8.6`) {
		t.Errorf("preview: %s", out)
	}
	w.coldfloor(1, "check", "session.yaml") // it has warnings
	w.coldfloor(0, "sheet", "session.yaml", "-o", "s.pdf")
	w.coldfloor(0, "track", "session.yaml", "-o", "s.flac")
	w.must(exec.Command("pdftotext", "s.pdf", "-"))
	w.must(exec.Command("flac", "--test", "--silent", "s.flac"))
	w.coldfloor(0, "run", "session.yaml", "--plain", "--mute", "--journal", "j.jsonl")
	if runs := w.runs(); len(runs) != 1 || runs[0].State != journal.Complete {
		t.Fatalf("%d runs after one", len(runs))
	}
	if out := w.coldfloor(0, "log", "--journal", "j.jsonl"); !strings.Contains(out, "Brief one") {
		t.Errorf("log: %s", out)
	}
	w.coldfloor(0, "review", "j.jsonl", "--plain")
	w.coldfloor(0, "export", "j.jsonl", "-o", "tables")
	w.coldfloor(1, "check", "aux.yaml") // a device's name: told at once, not waited for
}

// TestWindowsKilledAndGoneOnWith kills a run, lets a second process log a run
// of its own into the same journal, and goes on with the first.
func TestWindowsKilledAndGoneOnWith(t *testing.T) {
	w := newWindows(t)
	args := []string{w.exe, "run", "session.yaml", "--plain", "--mute", "--journal", "j.jsonl"}
	first := w.command("wine", args...)
	if err := first.Start(); err != nil {
		t.Fatal(err)
	}
	deadline := time.Now().Add(time.Minute)
	for !slices.ContainsFunc(w.loaded(), func(r *journal.Run) bool { return len(r.Sets) > 1 }) {
		if time.Now().After(deadline) {
			t.Fatal("no two sets are logged within a minute")
		}
		time.Sleep(50 * time.Millisecond)
	}
	second := w.command("wine", args...)
	if err := second.Start(); err != nil {
		t.Fatal(err)
	}
	w.kill(first)
	if err := second.Wait(); err != nil {
		t.Fatalf("the second process: %v", err)
	}
	x := tmuxtest.Start(t, 80, 24, w.env, "cd '"+w.dir+"' && exec wine '"+w.exe+"' run session.yaml --plain --mute --journal j.jsonl")
	x.Until("the question whether to go on", func(s string) bool { return strings.Contains(s, "was not finished") })
	x.Keys("g", "Enter")
	x.Until("the wait for Enter", func(s string) bool { return strings.Contains(s, "Enter starts") })
	x.Keys("Enter")
	x.Until("the question for the rounds", func(s string) bool { return strings.Contains(s, "Completed rounds") })
	x.Keys("Enter", "Enter", "Enter", "Enter", "Enter") // one answer a block, effort, pain, note; what is not read is lost
	x.WaitExit()
	runs := w.runs()
	if len(runs) != 2 {
		t.Fatalf("%d runs of two", len(runs))
	}
	for _, r := range runs {
		if r.State != journal.Complete || len(r.Sets) != 8 {
			t.Errorf("run %s: %s with %d sets of 8", r.ID, r.State, len(r.Sets))
		}
	}
}

// loaded reads the journal if it is there yet.
func (w windows) loaded() []*journal.Run {
	runs, _, _ := journaltest.Load(filepath.Join(w.dir, "j.jsonl"))
	return runs
}

// kill ends a Windows process as its system would, without a word.
func (w windows) kill(c *exec.Cmd) {
	w.t.Helper()
	if err := c.Process.Kill(); err != nil {
		w.t.Fatal(err)
	}
	_ = c.Wait()
}

//go:build e2e && unix

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
)

// What reads many journals can be interrupted at any moment, and leaves neither
// a temporary file, nor a table, nor a part of what is kept beside a journal.
func TestInterruptedReadingLeavesNothing(t *testing.T) {
	dir, long, temporary := t.TempDir(), t.TempDir(), t.TempDir() // one journal that is read in parts
	for to, sessions := range map[string][2]int{dir: {4, 400}, long: {1, 3000}} {
		if _, err := journalgen.Folder(to, sessions[0], sessions[1], time.Date(2004, 1, 5, 18, 0, 0, 0, time.UTC)); err != nil {
			t.Fatal(err)
		}
	}
	h := newHome(t, "")
	out := filepath.Join(t.TempDir(), "tables")
	for i, args := range [][]string{{"review", dir}, {"review", long}, {"export", "-o", out, dir}, {"review", dir}, {"next", "off-season-six-weeks", dir}} {
		var said bytes.Buffer
		c := exec.Command(binary(), args...)
		c.Env, c.Stdout, c.Stderr = append(h.env(), "TMPDIR="+temporary), &said, &said
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(30+100*i) * time.Millisecond) // some moment, whichever it is
		_ = c.Process.Signal(os.Interrupt)
		err := c.Wait()
		if status := c.ProcessState.Sys().(syscall.WaitStatus); err != nil && !status.Signaled() && !strings.Contains(said.String(), "interrupted") && args[0] != "next" {
			t.Errorf("%v: %v: %s", args, err, &said)
		}
		for _, pattern := range []string{filepath.Join(temporary, "*"), filepath.Join(dir, "*.tmp"), filepath.Join(dir, ".*.tmp"), filepath.Join(long, "*.tmp"), filepath.Join(long, ".*.tmp"), filepath.Join(out, ".*")} {
			if left, _ := filepath.Glob(pattern); len(left) > 0 {
				t.Errorf("%v left %q", args, left)
			}
		}
	}
	for _, dir := range []string{dir, long} {
		fresh := t.TempDir()
		if err := os.CopyFS(fresh, os.DirFS(dir)); err != nil {
			t.Fatal(err)
		}
		kept, _ := filepath.Glob(filepath.Join(fresh, ".*.review"))
		for _, p := range kept {
			if err := os.Remove(p); err != nil {
				t.Fatal(err)
			}
		}
		review := func(dir string) string {
			text, err := exec.Command(binary(), "review", "--json", dir).Output()
			if err != nil {
				t.Fatal(err)
			}
			return regexp.MustCompile(`"(now|ago_s)": .*`).ReplaceAllString(string(text), "") // the time of the review
		}
		if a, b := review(dir), review(fresh); a != b || a == "" {
			t.Error("what was kept before the interrupt changes the review")
		}
	}
}

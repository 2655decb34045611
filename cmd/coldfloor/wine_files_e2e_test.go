//go:build e2e

package main

import (
	"bufio"
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"
)

// hold is a program that has a file open as Windows programs do that share it for
// reading alone, until its input ends.
const hold = `#include <stdio.h>
#include <windows.h>
int main(int argc, char **argv) {
	HANDLE f = CreateFileA(argv[1], GENERIC_READ, FILE_SHARE_READ, NULL, OPEN_EXISTING, 0, NULL);
	puts(f == INVALID_HANDLE_VALUE ? "refused" : "held");
	fflush(stdout);
	getchar();
	return 0;
}
`

// holding has a file of the working folder open in another process while do runs.
func (w windows) holding(name string, do func()) {
	w.t.Helper()
	c := w.command("wine", "hold.exe", filepath.FromSlash(name))
	in, err := c.StdinPipe()
	if err != nil {
		w.t.Fatal(err)
	}
	out, err := c.StdoutPipe()
	if err != nil {
		w.t.Fatal(err)
	}
	if err := c.Start(); err != nil {
		w.t.Fatal(err)
	}
	if line, err := bufio.NewReader(out).ReadString('\n'); err != nil || strings.TrimSpace(line) != "held" {
		w.t.Fatalf("%s: %q, %v", name, line, err)
	}
	do()
	in.Close()
	_, _ = io.Copy(io.Discard, out)
	_ = c.Wait()
}

// refused runs the program, which has to end with code 1, and returns what it
// said of it.
func (w windows) refused(args ...string) string {
	w.t.Helper()
	c := w.command("wine", append([]string{w.exe}, args...)...)
	var errs bytes.Buffer
	c.Stderr = &errs
	if _ = c.Run(); c.ProcessState.ExitCode() != exitProblems {
		w.t.Errorf("coldfloor %v: exit code %d\n%s", args, c.ProcessState.ExitCode(), &errs)
	}
	return strings.ReplaceAll(errs.String(), "\r", "")
}

// folder returns the names in a folder and what the files hold.
func (w windows) folder(name string) string {
	w.t.Helper()
	var all strings.Builder
	entries, err := os.ReadDir(filepath.Join(w.dir, name))
	if err != nil {
		w.t.Fatal(err)
	}
	for _, e := range entries {
		text, _ := os.ReadFile(filepath.Join(w.dir, name, e.Name())) // of a folder nothing
		all.WriteString(e.Name() + ":" + string(text) + "\n")
	}
	return all.String()
}

// TestWindowsFiles: what is written is written whole or not at all while another
// program holds it, what is read may come from any shell, and whatever goes wrong
// is said once and in words.
func TestWindowsFiles(t *testing.T) {
	w := newWindows(t)
	w.write("hold.c", hold)
	w.must(exec.Command("x86_64-w64-mingw32-gcc", "-o", "hold.exe", "hold.c"))
	w.coldfloor(0, "log", "add", "session.yaml", "--all", "--rpe", "6", "--journal", "j.jsonl")
	w.coldfloor(0, "export", "j.jsonl", "-o", "tables")
	w.coldfloor(0, "sheet", "session.yaml", "-o", "s.pdf")
	w.coldfloor(0, "review", "j.jsonl", "--report", "r.html")
	w.coldfloor(0, "sessions", "show", "hallway-power", "-o", "mine.yaml")
	w.coldfloor(0, "log", "add", "session.yaml", "--all", "--rpe", "7", "--journal", "j.jsonl")
	t.Run("held open", w.heldOpen)
	t.Run("nobody reads on", w.nobodyReads)
	t.Run("from any shell", w.fromAnyShell)
	t.Run("said once", w.saidOnce)
}

func (w windows) heldOpen(t *testing.T) {
	w.t = t
	for name, args := range map[string][]string{
		"tables/sets.csv": {"export", "j.jsonl", "-o", "tables", "--force"},
		"s.pdf":           {"sheet", "session.yaml", "--large", "-o", "s.pdf", "--force"},
		"r.html":          {"review", "j.jsonl", "--report", "r.html", "--force"},
		"mine.yaml":       {"new", "mine.yaml", "--level", "beginner", "--minutes", "20", "--room", "3x2m", "--train", "strength", "--force"},
	} {
		before := w.folder(".") + w.folder("tables")
		w.holding(name, func() {
			said := w.refused(args...)
			if strings.Count(said, filepath.Base(name)) != 1 || !strings.Contains(said, "\nhint: close it if another program has it open") {
				t.Errorf("%v says\n%s", args, said)
			}
		})
		if after := w.folder(".") + w.folder("tables"); after != before {
			t.Errorf("%v left something behind or took something away", args)
		}
		w.coldfloor(0, args...) // once it is free
		if after := w.folder(".") + w.folder("tables"); after == before {
			t.Errorf("%v writes nothing", args)
		}
	}
}

// nobodyReads: a pipe whose reader has gone is no error.
func (w windows) nobodyReads(t *testing.T) {
	w.t = t
	for _, args := range [][]string{{"export", "j.jsonl", "--table", "sessions"}, {"sessions", "show", "hallway-power"}, {"preview", "hallway-power", "--steps"}} {
		r, closed, err := os.Pipe()
		if err != nil {
			t.Fatal(err)
		}
		r.Close()
		c := w.command("wine", append([]string{w.exe}, args...)...)
		var errs bytes.Buffer
		c.Stdout, c.Stderr = closed, &errs
		if err := c.Run(); err != nil || errs.Len() > 0 {
			t.Errorf("%v: %v\n%s", args, err, &errs)
		}
		closed.Close()
	}
}

// fromAnyShell: an older shell writes UTF-16 with a byte order mark for >.
func (w windows) fromAnyShell(t *testing.T) {
	w.t = t
	text := []byte{0xff, 0xfe}
	for _, u := range utf16.Encode([]rune(strings.ReplaceAll(brief, "\n", "\r\n"))) {
		text = append(text, byte(u), byte(u>>8))
	}
	w.write("utf16.yaml", string(text))
	if got, want := w.coldfloor(0, "preview", "utf16.yaml"), w.coldfloor(0, "preview", "session.yaml"); got != want {
		t.Errorf("got\n%s", got)
	}
}

// saidOnce: a message names a path once, and a speech program that is not there.
func (w windows) saidOnce(t *testing.T) {
	w.t = t
	for _, args := range [][]string{{"check", `no\such.yaml`}, {"export", `no\such.jsonl`, "-o", "out"}, {"sheet", "session.yaml", "-o", `no\such.pdf`},
		{"track", "session.yaml", "-o", `no\such.flac`}} {
		if said := w.refused(args...); strings.Count(said, "such") > 1 || strings.Count(said, "no\\") > 1 {
			t.Errorf("%v says\n%s", args, said)
		}
	}
	if said := w.refused("track", "session.yaml", "-o", "v.flac", "--voice"); !strings.Contains(said, "powershell") || strings.Contains(said, "Temp") {
		t.Errorf("a speech program that speaks nothing:\n%s", said)
	}
	found, err := filepath.Glob(filepath.Join(filepath.Dir(w.dir), "prefix/drive_c/windows/*/WindowsPowerShell/v1.0/powershell.exe"))
	if err != nil || len(found) == 0 {
		t.Fatalf("%v, %v", found, err)
	}
	for _, f := range found {
		if err := os.Remove(f); err != nil {
			t.Fatal(err)
		}
	}
	if said := w.refused("track", "session.yaml", "-o", "v.flac", "--voice"); !strings.Contains(said, "there is no powershell") || !strings.Contains(said, "\nhint: put powershell on the PATH") {
		t.Errorf("no speech program:\n%s", said)
	}
}

package tui

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/run"
)

func TestJournalThatCannotBeWritten(t *testing.T) {
	blocked := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	o := run.Options{Journal: filepath.Join(blocked, "journal.jsonl"), Plan: evening(t)}
	p := newProgram(t, o)
	p.await("The log cannot be written")
	if p.app.stage == running {
		t.Fatal("the session has started")
	}
	p.keys("q")
	if !p.quit || p.app.Err() == nil {
		t.Errorf("leaving gives %v", p.app.Err())
	}
	p = newProgram(t, o)
	p.keys("r")
	if p.app.stage != running || p.app.Err() != nil {
		t.Errorf("does not run without a log: %v", p.app.Err())
	}
	p.keys("q", "q")
	if !p.quit {
		t.Error("shows a form that nobody keeps")
	}
}

// A log that cannot be written any more at the end: it is said, what was typed
// is kept and tried again, and another place is offered.
func TestFullDiskAtTheEnd(t *testing.T) {
	o := run.Options{Journal: filepath.Join(t.TempDir(), "journal.jsonl"), Plan: evening(t)}
	t.Chdir(t.TempDir())
	p := newProgram(t, o)
	p.pass(30 * time.Second)
	takeAway(t, o.Journal)
	p.keys("q", "q", "6", "esc")
	p.await("Not logged yet")
	p.keys("t")
	p.await("Not logged yet")
	p.keys("b")
	p.await("0 to 10            6")
	p.keys("esc")
	p.await("Not logged yet")
	p.keys("w")
	if !p.quit || !strings.Contains(p.app.Closing(), "written to ") || strings.Contains(p.app.Closing(), "logged;") {
		t.Fatalf("quit %v, %q", p.quit, p.app.Closing())
	}
	found, _ := filepath.Glob("coldfloor-*.jsonl")
	if len(found) != 1 {
		t.Fatalf("in the working folder: %v", found)
	}
	r := runs(t, found[0])[0]
	if *r.Rating.RPE != 6 || len(r.Amendments) != 1 || r.State != journal.Stopped {
		t.Errorf("%s, %+v", r.State, r.Amendments)
	}
}

// takeAway takes a journal's folder away, at one stroke, which keeps the journal
// from being written as a full disk does. The function brings it back.
func takeAway(t *testing.T, file string) (bringBack func()) {
	t.Helper()
	folder := filepath.Dir(file)
	if err := os.Rename(folder, folder+".away"); err != nil {
		t.Fatal(err)
	}
	return func() {
		if err := os.Rename(folder+".away", folder); err != nil {
			t.Fatal(err)
		}
	}
}

// The disk has room again: what was typed is logged, once.
func TestDiskThatHasRoomAgain(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.pass(30 * time.Second)
	bringBack := takeAway(t, file)
	p.keys("q", "q", "6", "esc")
	p.await("Not logged yet")
	bringBack()
	p.keys("t")
	if !p.quit || !strings.Contains(p.app.Closing(), "logged;") {
		t.Errorf("quit %v, %q", p.quit, p.app.Closing())
	}
	p.close()
	if r := runs(t, file)[0]; *r.Rating.RPE != 6 || len(r.Amendments) != 1 || r.State != journal.Stopped {
		t.Errorf("%s, %+v", r.State, r.Amendments)
	}
}

// The terminal goes away under the form: what was typed is logged.
func TestTerminalClosedInTheForm(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	p.pass(30 * time.Second)
	p.keys("q", "q", "8", "enter", "y", "enter", "h", "i", "p")
	if err := p.app.keepTyped(); err != nil {
		t.Fatal(err)
	}
	p.close()
	if r := runs(t, file)[0]; *r.Rating.RPE != 8 || r.Said[0].Where != "hip" {
		t.Errorf("%+v", r.Rating)
	}
}

// An interrupt from outside stops and logs; any other end leaves the run to be
// gone on with.
func TestInterrupt(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	p := newProgram(t, run.Options{Journal: file, Plan: evening(t)})
	m, cmd := p.app.Update(Interrupt())
	p.app = m.(App)
	p.do(cmd)
	p.close()
	if r := runs(t, file)[0]; !p.quit || r.State != journal.Stopped {
		t.Error(r.State)
	}
}

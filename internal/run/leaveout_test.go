package run

import (
	"path/filepath"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// A day that the player leaves out is skipped and not missed, and trained
// nobody.
func TestLeaveOut(t *testing.T) {
	p := testPlan(t)
	plan, err := weeks.Parse("w.yaml", []byte("coldfloor: 1\ntitle: W\nstarts: 2026-01-05\nweeks: 1\ndays: {mon: a.yaml, thu: a.yaml}\n"),
		func(string) (*sessions.Session, error) { return p.Session, nil })
	if err != nil {
		t.Fatal(err)
	}
	f := NewFlow(Options{Journal: filepath.Join(t.TempDir(), "j.jsonl"), Plan: p})
	f.Open()
	t.Cleanup(func() { _ = f.Close() })
	d := plan.Days()[0]
	day := &journal.Weeks{Title: "W", Starts: "2026-01-05", Week: 1, Date: d.Date.String(), Place: 1, Session: "a.yaml"}
	if err := f.LeaveOut(p, day); err != nil {
		t.Fatal(err)
	}
	s := season.Of(plan, f.Runs(), units.DateOf(time.Date(2026, 1, 20, 12, 0, 0, 0, time.UTC)))
	if a, b := s.Weeks[0].Sessions[0].State, s.Weeks[0].Sessions[1].State; a != season.Skipped || b != season.Missed {
		t.Errorf("the day left out is %s, the other %s; want skipped and missed", a, b)
	}
	if runs := f.Runs(); len(runs) != 1 || runs[0].Counts() || runs[0].State != journal.Stopped {
		t.Errorf("runs %+v", runs)
	}
}

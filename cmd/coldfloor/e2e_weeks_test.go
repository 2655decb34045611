//go:build e2e

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"coldfloor/internal/tmuxtest"
)

// TestToday opens the program as a player with a plan of weeks does: with no
// word after it. What is today's is on the screen, Enter runs it, and the
// journal says for which day it was.
func TestToday(t *testing.T) {
	h := newHome(t, short)
	now := time.Now()
	plan := fmt.Sprintf("coldfloor: 1\ntitle: Winter\nstarts: %s\nweeks: 2\ndays:\n", now.Format("2006-01-02"))
	for _, d := range []int{0, 2} {
		plan += fmt.Sprintf("  %s: session.yaml\n", []string{"sun", "mon", "tue", "wed", "thu", "fri", "sat"}[now.AddDate(0, 0, d).Weekday()])
	}
	// The settings name the plan; the session is in the home folder.
	for file, text := range map[string]string{"winter.yaml": plan, ".config/coldfloor/settings.yaml": "weeks: " + filepath.Join(h.dir, "winter.yaml") + "\n"} {
		file = filepath.Join(h.dir, file)
		if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	x := tmuxtest.Start(t, 80, 24, h.env(), "cd \"$HOME\" && exec "+binary())
	x.WaitFor("Winter", "week 1 of 2", "today: Short one, week 1", "next: "+now.AddDate(0, 0, 2).Format("Mon 2 Jan"))
	x.Keys("l") // the list of sessions is one key away
	x.WaitFor("Choose a session", "Hallway power")
	x.Keys("q")
	x.WaitExit()

	x = tmuxtest.Start(t, 40, 12, h.env(), "cd \"$HOME\" && exec "+binary()+" run --mute winter.yaml")
	x.WaitFor("today: Short one, week 1")
	x.Keys("Enter")
	x.WaitFor("Before the first session")
	x.Keys("Enter")
	x.WaitFor("Before you start", "Short one, week 1")
	x.Keys("Enter")
	x.WaitFor("GET READY", "Low hops")
	x.Keys("q")
	x.WaitFor("Stop")
	x.Keys("q")
	x.WaitFor("Short one, week 1", "Effort")
	x.Keys("C-s")
	x.WaitExit()
	w := h.runs()[0].Started.Weeks
	if w == nil || w.Title != "Winter" || w.Week != 1 || w.Place != 1 || w.Date != now.Format("2006-01-02") || w.Session != "session.yaml" {
		t.Errorf("the run says it was for %+v", w)
	}
}

//go:build e2e

package main

import (
	"strings"
	"testing"

	"coldfloor/internal/journal"
	"coldfloor/internal/tmuxtest"
)

// short is a session that brings every kind of step.
const short = `coldfloor: 1
title: Short one
level: beginner
lead_in: 8s
blocks:
  - title: Up
    rounds: 2
    rest: 30s
    change: 8s
    exercises:
      - {name: Low hops, reps: 20, rep: 1s, contacts: 1, easier: Heel raises, cues: [Quiet floor], how: On the balls of the feet.}
      - {name: Split squat, reps_per_side: 2, rep: 10s, switch: 8s, cues: [Chest tall]}
`

// TestRunByKeys walks the main job as a player does: the caution, each phase on
// the screen, sets ended by key, a pause, the easier variant, a longer rest, a
// resize, a stop that asks, the form, and the journal read back.
func TestRunByKeys(t *testing.T) {
	h := newHome(t, short)
	// In the smallest window every text is set small, and can be read back.
	x := tmuxtest.Start(t, 40, 12, h.env(), "cd \"$HOME\" && exec "+binary()+" run --mute session.yaml")
	x.WaitFor("Before the first session")
	x.Keys("Enter")
	x.WaitFor("Before you start") // what the check finds for this player
	x.Keys("Enter")

	x.WaitFor("GET READY", "Low hops", "20 reps")
	x.Keys("e")
	x.WaitFor("WORK", "Heel raises", "Round 1 of 2")
	x.Slap("Space", "NEXT EXERCISE")
	x.WaitFor("left side, 2 reps")
	x.WaitFor("WORK", "Chest tall")
	x.Slap("x", "SWITCH SIDES") // any key that is not another's ends the set
	x.WaitFor("WORK", "right side")
	x.Slap("PageDown", "REST")
	x.Keys("Space") // one slap more must not eat the rest
	x.Keys("p")
	x.WaitFor("PAUSED")
	x.Resize(200, 60)
	x.WaitFor("p resume")
	x.Resize(40, 12)
	x.Keys("p")
	x.WaitFor("REST", "Heel raises") // the easier variant stays
	x.Keys("+")
	x.Keys("Right")
	x.WaitFor("WORK", "Round 2 of 2")
	x.Keys("q")
	x.WaitFor("Stop")
	x.Keys("q")

	x.WaitFor("Effort", "Pain")
	x.Keys("Right", "Right", "Right", "C-s")
	if code := x.WaitExit(); code != 0 {
		t.Fatalf("exit code %d; the screen shows\n%s", code, x.Screen())
	}

	r := h.runs()[0]
	if r.State != journal.Stopped || r.Title() != "Short one" {
		t.Errorf("logged as %s %q", r.State, r.Title())
	}
	if len(r.Sets) != 3 || r.Sets[0].Outcome != "partial" || !r.Sets[0].Easier || r.Sets[0].End != "finish" ||
		strings.Join(r.Sets[1].Sides, " ") != "left right" || r.Sets[2].Outcome != "partial" {
		t.Errorf("sets: %+v", r.Sets)
	}
	if len(r.Rests) != 1 || r.Rests[0].PrescribedS != 30 || r.Rests[0].End == "clock" || r.Rests[0].PausedS == 0 || r.Rests[0].End != "skip" {
		t.Errorf("rests: %+v", r.Rests)
	}
	if r.Rating.RPE == nil {
		t.Errorf("no effort logged: %+v", r.Rating)
	}
	if l := h.last(); l.Title != "Short one" {
		t.Errorf("log show: %+v", l)
	}
}

// TestRunInATinyTerminal: in 20 by 5 cells a player can read what is to be known
// before the start with the keys for it, list the keys of a run, turn the sound up
// and stop, in English and German.
func TestRunInATinyTerminal(t *testing.T) {
	for _, c := range []struct{ language, below, ready, pages, closes, loud, stop string }{
		{"en", "more", "GET READY", "? more keys (1/", "? closes the list", "terminal", "Stop?"},
		{"de", "weit", "BEREIT MACHEN", "? mehr Tasten (1/", "? schließt die Liste", "Terminal", "Aufhören?"},
	} {
		t.Run(c.language, func(t *testing.T) {
			h := newHome(t, short)
			x := tmuxtest.Start(t, 20, 5, h.env(), "cd \"$HOME\" && exec "+binary()+" run --no-log --mute --language "+c.language+" session.yaml")
			x.WaitFor("↓", c.below)
			x.Slap("Down", "q: ") // the answers follow the text
			x.Slap("Enter", c.ready)
			x.Keys("?")
			x.WaitFor(c.pages)
			x.Slap("?", c.closes)
			x.Keys("?")
			x.WaitFor(c.ready)
			x.Keys("Up")
			x.WaitFor(c.loud) // there is no sound device here, so the bell stands in
			x.Keys("q")
			x.WaitFor(c.stop)
			x.Keys("Q")
			x.WaitExit()
		})
	}
}

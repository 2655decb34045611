//go:build e2e

package main

import (
	"math/rand/v2"
	"strings"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/tmuxtest"
)

// brief is a session of some eight seconds with eight sets.
const brief = `coldfloor: 1
title: Brief one
lead_in: 500ms
blocks:
  - title: Up
    rounds: 4
    rest: 700ms
    change: 300ms
    exercises:
      - {name: Low hops, reps: 2, rep: 300ms, contacts: 1}
      - {name: Wall push, reps: 1, rep: 600ms}
`

// TestKilledAndGoneOnWith kills runs with SIGKILL at random moments, several
// times each, and goes on every time: each set ends up logged once, and at
// most the set in hand had to be done again.
func TestKilledAndGoneOnWith(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	for range 4 {
		h := newHome(t, brief)
		kills, done := 0, 0
		for {
			x := tmuxtest.Start(t, 80, 24, h.env(), "cd \"$HOME\" && exec "+binary()+" run --mute session.yaml")
			screen := x.Until("a session or a question", func(s string) bool {
				return strings.Contains(s, "Before the first session") || strings.Contains(s, "Before you start") || strings.Contains(s, "was not finished") || strings.Contains(s, "to go")
			})
			if strings.Contains(screen, "was not finished") {
				x.Keys("g")
			} else {
				x.Keys("Enter")
				x.WaitFor("Before you start") // what the check finds for this player
				x.Keys("Enter")
			}
			if kills == 3 {
				x.WaitFor("Effort, 0 to 10")
				x.Keys("C-s")
				x.WaitExit()
				break
			}
			x.WaitFor(" to go", "Round")
			time.Sleep(time.Duration(random.IntN(2500)) * time.Millisecond) // the random moment itself
			if err := syscall.Kill(x.PID(), syscall.SIGKILL); err != nil {
				t.Fatal(err)
			}
			x.WaitExit()
			kills++
			r := h.runs()[0]
			if r.State != journal.Unfinished || len(r.Sets) < done {
				t.Fatalf("after kill %d: %s with %d sets, before it %d", kills, r.State, len(r.Sets), done)
			}
			done = len(r.Sets)
		}
		runs := h.runs()
		if len(runs) != 1 || runs[0].State != journal.Complete {
			t.Fatalf("%d runs, the first %s", len(runs), runs[0].State)
		}
		for _, s := range runs[0].Sets {
			if s.Outcome != "done" {
				t.Errorf("set %+v", s)
			}
		}
		if len(runs[0].Sets) != 8 {
			t.Errorf("%d sets logged of 8", len(runs[0].Sets))
		}
	}
}

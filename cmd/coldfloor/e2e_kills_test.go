//go:build e2e

package main

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
)

// TestKilledTwoAtATime kills runs that share a journal with SIGKILL at random
// moments, two at a time: no line is damaged, none is missing between those of
// its run, and no set stands twice. KILLS says how many runs, 20 unless it does.
func TestKilledTwoAtATime(t *testing.T) {
	kills := 20
	if n, err := strconv.Atoi(os.Getenv("KILLS")); err == nil {
		kills = n
	}
	h := newHome(t, brief)
	log := filepath.Join(h.dir, "journal.jsonl")
	start := func() *exec.Cmd {
		c := exec.Command(binary(), "run", h.file, "--plain", "--mute", "--speed", "20", "--journal", log)
		c.Env = append(os.Environ(), "HOME="+h.dir, "XDG_DATA_HOME=", "XDG_CONFIG_HOME=", "XDG_STATE_HOME=")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		return c
	}
	sets := 0
	for n := 0; n < kills; n += 2 {
		both := []*exec.Cmd{start(), start()}
		time.Sleep(time.Duration(rand.IntN(600)) * time.Millisecond) // the random moment itself
		for _, c := range both {
			_ = c.Process.Kill()
			_ = c.Wait()
		}
	}
	runs, problems, err := journaltest.Load(log)
	if err != nil || len(problems) > 0 {
		t.Fatalf("%v, %v", err, problems)
	}
	for _, r := range runs {
		sets += len(r.Sets)
		seen := map[journal.Place]bool{}
		for _, s := range r.Sets {
			if seen[s.Place] {
				t.Errorf("run %s: set %+v stands twice", r.ID, s.Place)
			}
			seen[s.Place] = true
		}
	}
	t.Logf("%d runs killed, %d of them begun, %d sets logged, nothing damaged or missing", kills, len(runs), sets)
}

//go:build e2e && linux

package live

import (
	"os"
	"os/exec"
	"strconv"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// TestHeardAfterAStop stops the process for longer than the server holds ahead,
// as a suspended machine does, and goes on: what comes after it is heard, at its
// moment.
func TestHeardAfterAStop(t *testing.T) {
	if os.Getenv(alone) == "" {
		inProcess(t)
		return
	}
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 2, rest: 20s, exercises: [{name: Hops, reps: 12, rep: 1s}]}]\n")
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	m := &moments{t: t, live: New(Options{Volume: 1}), opts: sound.Options{Pips: 3, Clicks: true}}
	waitFor(t, m.live, playing, asleep)
	time.Sleep(2500 * ms)
	m.begin(p, "from the start", p.Total)
	m.wait(8 * time.Second)
	stopped := time.Now()
	c := exec.Command("sh", "-c", "kill -STOP $0; sleep 6; kill -CONT $0", strconv.Itoa(os.Getpid()))
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	for time.Since(stopped) < 6*time.Second {
		m.wait(50 * ms)
	}
	if err := c.Wait(); err != nil {
		t.Error(err)
	}
	m.wait(time.Second)
	m.do(engine.Resume, "after a stop", p.Total)
	for m.driven.View().Phase != engine.Over {
		m.wait(100 * ms)
	}
	m.live.Close()
	report(t, m.due, rec, m.live.epoch)
}

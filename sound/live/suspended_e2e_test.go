//go:build e2e

package live

import (
	"os"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// TestTheSinkIsSuspended lets the server stop its device for a while and go on,
// as it does when headphones are unplugged and plugged in again: the bell stands in
// meanwhile, nothing from before is heard late, and every later cue comes whole and
// at its moment. The recording begins where the device goes on, because a suspended
// sink records nothing.
func TestTheSinkIsSuspended(t *testing.T) {
	for name, stop := range map[string]struct {
		from, to time.Duration // by the run's clock
		rings    int32         // of the bell meanwhile
	}{
		"in a rest":     {12 * time.Second, 14 * time.Second, 0},
		"through a set": {4200 * ms, 14 * time.Second, 2}, // it starts within a second, and ends
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel() // each has a process and a server of its own
			if os.Getenv(alone) == "" {
				inProcess(t)
				return
			}
			var rings atomic.Int32
			p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 2, rest: 16s, exercises: [{name: Hops, reps: 3, rep: 2s}]}]\n")
			m := &moments{t: t, live: New(Options{Volume: 1, Bell: func() { rings.Add(1) }}), opts: sound.Options{Pips: 3, Clicks: true}}
			waitFor(t, m.live, playing, asleep)
			time.Sleep(2500 * ms)
			m.begin(p, "", p.Total)
			m.wait(stop.from - m.clock())
			if err := server.Suspend(true); err != nil {
				t.Fatal(err)
			}
			m.wait(stop.to - m.clock())
			rec, err := server.Record()
			if err != nil {
				t.Fatal(err)
			}
			if err := server.Suspend(false); err != nil {
				t.Fatal(err)
			}
			from := m.live.real() + 2*time.Second
			m.wait(3 * time.Second)
			if n := m.live.Notice(); n != (Notice{}) {
				t.Errorf("notice %v though the device goes on", n)
			}
			for m.driven.View().Phase != engine.Over {
				m.wait(100 * ms)
			}
			m.live.Close()
			if n := rings.Load(); n != stop.rings {
				t.Errorf("the bell rang %d times while the device stood, want %d", n, stop.rings)
			}
			m.due = slices.DeleteFunc(m.due, func(d due) bool { return d.at < from })
			report(t, m.due, rec, m.live.epoch)
		})
	}
}

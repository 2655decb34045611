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

// TestTheServerHangs lets the server hang for ten seconds in the middle of a cue,
// once with nobody at the keys, once with a key meanwhile. The run goes on, the
// bell stands in, and every cue from two seconds after the server goes on stands
// to its moment, whole.
func TestTheServerHangs(t *testing.T) {
	for name, key := range map[string]engine.Action{"untouched": "", "a key meanwhile": engine.Finish} {
		t.Run(name, func(t *testing.T) {
			if os.Getenv(alone) == "" {
				inProcess(t)
				return
			}
			var rings atomic.Int32
			p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 2, rest: 20s, exercises: [{name: Hops, reps: 12, rep: 1s}]}]\n")
			rec, err := server.Record()
			if err != nil {
				t.Fatal(err)
			}
			m := &moments{t: t, live: New(Options{Volume: 1, Bell: func() { rings.Add(1) }}), opts: sound.Options{Pips: 3, Clicks: true}}
			waitFor(t, m.live, playing, asleep)
			time.Sleep(2500 * ms)
			m.begin(p, "", p.Total)
			began := m.live.real()
			m.wait(5200*ms - (m.live.real() - began)) // its start sounds
			from := m.live.real() - 500*ms
			if err := server.Hang(); err != nil {
				t.Fatal(err)
			}
			m.wait(4 * time.Second)
			if key != "" {
				m.do(key, "after a key", p.Total)
			}
			m.wait(6 * time.Second)
			if err := server.GoOn(); err != nil {
				t.Fatal(err)
			}
			to := m.live.real() + 2*time.Second
			m.wait(3 * time.Second)
			if n := m.live.Notice(); n != (Notice{}) {
				t.Errorf("notice %v though the server goes on", n)
			}
			for m.driven.View().Phase != engine.Over {
				m.wait(100 * ms)
			}
			m.live.Close()
			if key != "" && rings.Load() == 0 {
				t.Error("nothing was rung for the key")
			}
			if at, planned := m.clock(), p.Total; key == "" && at < planned {
				t.Errorf("over after %v of %v", at, planned)
			}
			m.due = slices.DeleteFunc(m.due, func(d due) bool { return d.at > from && d.at < to })
			report(t, m.due, rec, m.live.epoch)
		})
	}
}

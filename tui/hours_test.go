package tui

import (
	"flag"
	"fmt"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/sessions"
	"coldfloor/sound"
)

var hours = flag.Float64("hours", 0.5, "how long the run is whose memory is measured, in hours of its own clock")

// long returns a session of nearly six hours, the most that one may be.
func long(t *testing.T) *plan.Plan {
	t.Helper()
	var b strings.Builder
	b.WriteString("coldfloor: 1\ntitle: All day\nblocks:\n")
	for i := range 10 {
		fmt.Fprintf(&b, "  - {title: Block %d, rounds: 25, rest: 40s, change: 5s, exercises: [{name: Pogo hops, reps: 10, rep: 700ms, contacts: 1}, {name: Split squat, reps_per_side: 5, tempo: 1-0-1, switch: 3s}]}\n", i+1)
	}
	s, err := sessions.Parse("long.yaml", []byte(b.String()))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// liveHeap returns the live heap after a collection, in bytes.
func liveHeap() uint64 {
	runtime.GC()
	runtime.GC() // what finalizers let go of
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.HeapAlloc
}

// A run's memory stays flat: the screen drawn every second, the log written, the
// sound drawn up anew at every step, sets done again. From an eighth of the time
// on the live heap grows by what the log keeps in hand and no more.
func TestMemoryStaysFlat(t *testing.T) {
	p := newProgram(t, run.Options{Journal: filepath.Join(t.TempDir(), "j.jsonl"), Plan: long(t)})
	all := time.Duration(*hours * float64(time.Hour))
	early, step, rests := uint64(0), -1, 0
	for began := p.clock.now; p.clock.now-began < all; {
		p.pass(time.Second)
		if p.app.View() == "" {
			t.Fatal("nothing is shown")
		}
		a := p.app.run.run
		v := a.View()
		if v.Phase == engine.Over || p.app.stage != running {
			t.Fatalf("the session is over after %v", p.clock.now)
		}
		if v.Step != step {
			step = v.Step
			sounds(a.Plan(), v)
			if a.Plan().Steps[step].Kind == plan.Rest {
				if rests++; rests%4 != 0 {
					p.keys("r") // the set again
				}
			}
		}
		if early == 0 && p.clock.now-began >= all/8 {
			early = liveHeap()
		}
	}
	late, n := liveHeap(), len(p.app.run.run.Done().Sets)
	t.Logf("%v on the run's clock, %d sets: %d kB of live heap after an eighth, %d kB at the end", all, n, early>>10, late>>10)
	if n == 0 || late > early+early/2+uint64(n)*4<<10 {
		t.Errorf("the live heap went from %d to %d bytes with %d sets", early, late, n)
	}
	runtime.KeepAlive(p)
}

// sounds draws up what is to be heard from a moment on, as a device would be
// given it.
func sounds(p *plan.Plan, v engine.View) {
	s := sound.NewScheduler()
	for c := range sound.Timeline(p, v, sound.Options{Pips: sound.DefaultPips, Clicks: true}) {
		if c.At > 2*time.Minute {
			break
		}
		s.Place(sound.Position(c.At), c.Clip)
	}
	buf := make([][2]float64, 4096)
	s.Stream(buf)
}

//go:build e2e

package live

import (
	"math"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/internal/plan"
	"coldfloor/internal/pulsetest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// moments drives runs under a recording and notes for what moment, on the
// host's clock, each cue is.
type moments struct {
	t      *testing.T
	live   *Sound
	due    []due
	driven *enginetest.Drive
	plan   *plan.Plan
}

// due is a cue and the moment it is for.
type due struct {
	at   time.Duration
	clip *sound.Clip
	what string
}

// begin begins a run of p; its cues up to length are due.
func (m *moments) begin(p *plan.Plan, what string, length time.Duration) {
	clock := enginetest.Since(1)
	m.live.Follow(p, sound.Options{Pips: 3}, clock, 1)
	m.driven = enginetest.New(p, engine.Options{CountIn: 2 * time.Second}, clock, m.live)
	m.plan = p
	m.do(engine.Start, what, length)
}

// do acts; what is to be heard within length from then on is due.
func (m *moments) do(a engine.Action, what string, length time.Duration) {
	m.driven.Do(a)
	m.live.mu.Lock()
	now := m.live.run.viewed // as the engine has it: a busy machine holds this test up
	m.live.mu.Unlock()
	m.due = slices.DeleteFunc(m.due, func(d due) bool { return d.at > now })
	if a != engine.Pause && a != engine.Stop {
		for c := range sound.Timeline(m.plan, m.driven.View(), sound.Options{Pips: 3}) {
			if c.At <= length {
				m.due = append(m.due, due{now + c.At, c.Clip, what})
			}
		}
	}
	m.wait(length + 700*ms)
}

// wait lets time pass.
func (m *moments) wait(d time.Duration) {
	for end := time.Now().Add(d); time.Now().Before(end); time.Sleep(min(50*ms, time.Until(end))) {
		m.driven.Tick()
	}
}

func TestRecordedFirstMoments(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 3, rest: 40s, exercises: [{name: Hops, time: 6s}]}]\n")
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	m := &moments{t: t, live: New(Options{Volume: 1})}
	waitFor(t, m.live, playing, asleep)
	time.Sleep(2500 * ms)
	for range 3 {
		m.begin(p, "lead-in", 5*time.Second)
		m.do(engine.Stop, "", 2500*ms)
	}
	m.begin(p, "lead-in", 5*time.Second)
	m.do(engine.Skip, "skip", 38200*ms) // into the rest, 1.8 s to go with one pip left...
	m.do(engine.Pause, "", 4*time.Second)
	m.do(engine.Resume, "resumed", 1500*ms)
	m.do(engine.Pause, "", 3*time.Second)
	m.do(engine.Skip, "skipped while paused", 39*time.Second)
	m.do(engine.Pause, "", 30*time.Second)
	m.do(engine.Resume, "resumed late", 1500*ms)
	m.live.Close()
	report(t, m.due, stopRecording(t, rec))
}

// report holds every cue against the moment it is for.
func report(t *testing.T, list []due, samples []float32) {
	onsets := pulsetest.Onsets(samples, 0.005, sound.Position(50*ms))
	first := onsets[0]
	var off []float64
	for _, d := range list {
		expected := first + sound.Position(d.at-list[0].at)
		if expected+d.clip.Len() > len(samples) {
			t.Fatalf("%s at %v was not recorded", d.clip.Name, d.at)
		}
		off = append(off, float64(pulsetest.Locate(samples, d.clip.Samples(), expected, 8820)-expected)/44.1)
	}
	mid := median(slices.Clone(off))
	worst := []float64{}
	for i, d := range list {
		t.Logf("%9.3fs %-16s %-22s off %+8.3f ms", d.at.Seconds(), d.clip.Name, d.what, off[i]-mid)
		worst = append(worst, math.Abs(off[i]-mid))
	}
	slices.Sort(worst)
	t.Logf("%d cues: off by %.3f ms at the 95th percentile, %.3f ms at most", len(worst), worst[len(worst)*95/100], worst[len(worst)-1])
}

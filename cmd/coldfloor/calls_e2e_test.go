//go:build e2e

package main

import (
	"context"
	"math"
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/pulsetest"
	"coldfloor/sessions"
	"coldfloor/sound"
)

const reacting = `coldfloor: 1
title: React
lead_in: 4s
blocks:
  - title: Calls
    rounds: 2
    rest: 6s
    exercises:
      - {name: Footwork, time: 20s, calls: [front left, front right, back left, back right], call_every: 2s-4s}
      - {name: Squat, reps: 4, tempo: 1-0-1}
`

// TestRecordedCallsAreThoseOfTheLog records a run whose calls nobody chose, and
// holds what was played against the calls that the seed in its log gives, and
// the clicks of its reps against the plan.
func TestRecordedCallsAreThoseOfTheLog(t *testing.T) {
	h := newHome(t, reacting)
	server := soundServer(t)
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	c := exec.Command(binary(), "run", "--plain", h.file)
	c.Env = append(slices.DeleteFunc(os.Environ(), func(v string) bool { return strings.HasPrefix(v, "SSH_CONNECTION=") }), server.Env()...)
	c.Env = append(c.Env, "HOME="+h.dir, "XDG_DATA_HOME=", "XDG_CONFIG_HOME=", "XDG_STATE_HOME=")
	if out, err := c.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	time.Sleep(500 * time.Millisecond)
	samples, err := rec.Stop(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	holdLog(t, samples, 1, h.runs()[0])
}

// holdLog compares what was recorded, by a clock that ran at a speed, with what was
// to be heard in a run.
func holdLog(t *testing.T, samples []float32, speed float64, r *journal.Run) {
	t.Helper()
	s, err := sessions.Parse("log", []byte(r.Started.Text))
	if err != nil {
		t.Fatal(err)
	}
	seed := r.Started.Seed
	if seed == 0 {
		t.Fatal("the log holds no seed")
	}
	p := plan.Of(s)
	want := slices.Collect(sound.Timeline(p, sound.Beginning(p), sound.Options{Pips: sound.DefaultPips, Clicks: true, Seed: seed, AllPaced: true}))
	holdSamples(t, samples, speed, want)
}

// holdSamples compares what was recorded with what was to be heard: each clip
// where it should be, against the middle of all.
func holdSamples(t *testing.T, samples []float32, speed float64, want []sound.Placed) {
	t.Helper()
	first := pulsetest.Onsets(samples, 0.005, sound.Position(50*time.Millisecond))[0]
	var off []float64 // ms
	calls, clicks := 0, 0
	for _, c := range want {
		expected := first + sound.Position(time.Duration(speed*float64(c.At-want[0].At)))
		if expected+c.Clip.Len() > len(samples) {
			t.Fatalf("%s at %v was not recorded", c.Clip.Name, c.At)
		}
		got := pulsetest.Locate(samples, c.Clip.Samples(), expected, sound.Position(100*time.Millisecond))
		off = append(off, float64(got-expected)/44.1)
		switch c.Clip.Kind {
		case sound.Call:
			calls++
			// Another direction's tones would go together less well.
			if best := bestCall(samples[got:min(got+22050, len(samples))]); best != c.Clip.Name {
				t.Errorf("at %v %s was heard, want %s", c.At, best, c.Clip.Name)
			}
		case sound.Click:
			clicks++
		}
	}
	mid := slices.Sorted(slices.Values(off))[len(off)/2]
	var worst []float64
	for i, o := range off {
		worst = append(worst, math.Abs(o-mid))
		t.Logf("%8.3fs %-16s off %+.3f ms", want[i].At.Seconds(), want[i].Clip.Name, o-mid)
	}
	slices.Sort(worst)
	p95 := worst[len(worst)*95/100]
	t.Logf("%d calls and %d clicks among %d cues: off by %.3f ms at the 95th percentile, %.3f ms at most", calls, clicks, len(want), p95, worst[len(worst)-1])
	// Generous: what a shared machine does to a short recording is not ours, and
	// under Wine the device's clock is known only after some seconds.
	if calls < 8 || clicks < 8 || p95 > 50 {
		t.Errorf("want 8 calls and 8 clicks at least, within 50 ms at the 95th percentile")
	}
}

// bestCall returns the name of the call that goes together best with samples.
func bestCall(samples []float32) (name string) {
	best := 0.0
	for d := range 4 {
		clip := sound.CallTones(d)
		dot, power := 0.0, 0.0
		for i, v := range clip.Samples()[:min(clip.Len(), len(samples))] {
			dot += float64(v) * float64(samples[i])
			power += float64(v) * float64(v)
		}
		if score := dot / math.Sqrt(power); score > best {
			best, name = score, clip.Name
		}
	}
	return name
}

//go:build e2e

package live

import (
	"flag"
	"fmt"
	"math"
	"os"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/internal/plan"
	"coldfloor/internal/pulsetest"
	"coldfloor/sessions"
	"coldfloor/sound"
)

var long = flag.Bool("long", false, "record whole sessions")

// server is what every test here plays to: a process opens one device.
var server *pulsetest.Server

func TestMain(m *testing.M) {
	flag.Parse()
	os.Exit(withServer(m))
}

func withServer(m *testing.M) int {
	dir, err := os.MkdirTemp("", "pulse")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	if server, err = pulsetest.Start(dir); err != nil {
		panic(err)
	}
	defer server.Stop()
	for _, v := range server.Env() {
		name, value, _ := strings.Cut(v, "=")
		os.Setenv(name, value)
	}
	os.Unsetenv("SSH_CONNECTION")
	return m.Run()
}

const short = `coldfloor: 1
title: Short and sharp
lead_in: 5s
blocks:
  - title: Up
    rounds: 2
    rest: 21s
    exercises:
      - {name: Split jumps, reps_per_side: 3, rep: 800ms, switch: 3s}
`

func TestRecordedCuesStandAsInThePlan(t *testing.T) {
	if err := record(t, short, sound.Options{Pips: 3}); err != nil {
		t.Error(err)
	}
}

// record runs a session with nobody touching a key and holds what was played
// against the plan.
func record(t *testing.T, text string, o sound.Options) error {
	s, err := sessions.Parse("e2e.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Of(s)
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	used := processor()
	began := time.Now()
	l := New(Options{Volume: 1})
	waitFor(t, l, playing, asleep)
	clock := enginetest.Since(1)
	l.Follow(p, o, clock, 1)
	r := enginetest.New(p, engine.Options{CountIn: 3 * time.Second}, clock, l)
	r.Do(engine.Start)
	for r.View().Phase != engine.Over {
		time.Sleep(100 * time.Millisecond)
		r.Tick()
	}
	l.Close()
	if n := l.Notice(); n != (Notice{}) {
		t.Errorf("notice %v", n)
	}
	t.Logf("processor time of the session with its sound: %.2f %% of a core", 100*(processor()-used).Seconds()/time.Since(began).Seconds())
	samples := stopRecording(t, rec)
	return hold(t, samples, slices.Collect(sound.Timeline(p, sound.Beginning(p), o)))
}

// hold compares recorded cues with the plan: the spacing of each to the one
// before, and how far they run apart over the session, from the median of its
// first tenth to that of its last, so that a cue a busy machine tore is not
// taken for drift.
func hold(t *testing.T, samples []float32, want []sound.Placed) error {
	t.Helper()
	onsets := pulsetest.Onsets(samples, 0.005, sound.Position(50*time.Millisecond))
	if len(onsets) == 0 {
		t.Fatal("nothing was heard")
	}
	const within = 8820 // 200 ms
	first := pulsetest.Locate(samples, want[0].Clip.Samples(), onsets[0], within)
	var off, spacing []float64 // ms
	for i, c := range want {
		expected := first + sound.Position(c.At) - sound.Position(want[0].At)
		if expected+len(c.Clip.Samples()) > len(samples) {
			t.Fatalf("%s at %v was not recorded", c.Clip.Name, c.At)
		}
		got := pulsetest.Locate(samples, c.Clip.Samples(), expected, within)
		off = append(off, float64(got-expected)/44.1)
		if i > 0 {
			spacing = append(spacing, math.Abs(off[i]-off[i-1]))
		}
		t.Logf("%9.3fs %-16s off %+.3f ms", c.At.Seconds(), c.Clip.Name, off[i])
	}
	tenth := max(3, len(off)/10)
	drift := median(off[len(off)-tenth:]) - median(off[:tenth])
	slices.Sort(spacing)
	p95 := spacing[len(spacing)*95/100]
	t.Logf("%d cues: spacing off by %.3f ms at the median, %.3f ms at the 95th percentile, %.3f ms at most; drift %.3f ms",
		len(want), spacing[len(spacing)/2], p95, spacing[len(spacing)-1], drift)
	if p95 > 1 {
		return fmt.Errorf("spacing is off by %.3f ms at the 95th percentile, over 1 ms", p95)
	}
	if math.Abs(drift) > 5 {
		return fmt.Errorf("cues drift by %.3f ms, over 5 ms", drift)
	}
	return nil
}

func median(v []float64) float64 {
	v = slices.Sorted(slices.Values(v))
	return v[len(v)/2]
}

// waitFor waits until l is in one of the states.
func waitFor(t *testing.T, l *Sound, states ...state) {
	t.Helper()
	for deadline := time.Now().Add(20 * time.Second); time.Now().Before(deadline); time.Sleep(10 * time.Millisecond) {
		l.mu.Lock()
		is := l.state
		l.mu.Unlock()
		if slices.Contains(states, is) {
			return
		}
	}
	t.Fatalf("the device does not come to any of the states %v", states)
}

// processor returns the processor time used by this process so far.
func processor() time.Duration {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return 0
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

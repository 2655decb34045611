//go:build e2e

package live

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/internal/pulsetest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// TestRecordedKeys pauses in the middle of a cue, resumes, and ends a set by a
// key: the cue is cut, and what follows stands to the keys as in the plan.
func TestRecordedKeys(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 2s\nblocks: [{title: A, rounds: 2, rest: 15s, exercises: [{name: Hops, time: 20s}]}]\n")
	l := New(Options{Volume: 1})
	waitFor(t, l, playing, asleep)
	clock := enginetest.Since(1)
	l.Follow(p, sound.Options{}, clock, 1)
	r := enginetest.New(p, engine.Options{CountIn: 2 * time.Second}, clock, l)
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	time.Sleep(time.Second)
	begun := time.Now()
	until := func(d time.Duration) {
		for time.Since(begun) < d {
			time.Sleep(min(50*ms, d-time.Since(begun)))
			r.Tick()
		}
	}
	r.Do(engine.Start)
	until(2200 * ms) // work starts at 2 s and its cue sounds for 450 ms
	r.Do(engine.Pause)
	until(5 * time.Second)
	r.Do(engine.Resume) // work at 7 s
	until(9 * time.Second)
	r.Do(engine.Finish) // rest from 9 s, its end announced at 14 s, work at 24 s
	until(26 * time.Second)
	r.Do(engine.Stop)
	l.Close()
	samples := stopRecording(t, rec)
	onsets := pulsetest.Onsets(samples, 0.005, sound.Position(300*ms))
	if len(onsets) != 5 {
		t.Fatalf("%d cues were heard, want 5", len(onsets))
	}
	silent := onsets[0]
	for i := onsets[0]; i < onsets[1]; i++ {
		if samples[i] > 0.005 || samples[i] < -0.005 {
			silent = i
		}
	}
	sounded := sound.SampleRate.D(silent - onsets[0])
	t.Logf("a cue cut after 200 ms sounded for %v", sounded)
	if sounded < 100*ms || sounded > 440*ms {
		t.Errorf("want about 200 ms of its 450")
	}
	for i, want := range []time.Duration{2 * time.Second, 5 * time.Second, 10 * time.Second} {
		got := sound.SampleRate.D(onsets[i+2] - onsets[i+1])
		t.Logf("cue %d follows the one before by %v, want %v", i+2, got, want)
		if (got - want).Abs() > 250*ms { // the keys come from this test's own sleeps, late on a busy machine
			t.Error("too far off")
		}
	}
}

// stopRecording ends a recording and returns it.
func stopRecording(t *testing.T, rec *pulsetest.Recording) []float32 {
	t.Helper()
	time.Sleep(1500 * ms) // a busy machine brings the end late
	ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
	defer cancel()
	samples, err := rec.Stop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	return samples
}

// alone is set where a test has a process, and so a server, of its own.
const alone = "COLDFLOOR_TEST_ALONE"

// TestTheServerDies kills the server in the middle of a cue: the bell takes over.
// Once the server is back its sound is, too, with nothing done about it.
func TestTheServerDies(t *testing.T) {
	if os.Getenv(alone) == "" {
		inProcess(t)
		return
	}
	var rings atomic.Int32
	l := New(Options{Volume: 1, Bell: func() { rings.Add(1) }})
	waitFor(t, l, playing, asleep)
	l.Play(sound.Placed{At: 0, Clip: sound.GetReady}, sound.Placed{At: time.Second, Clip: sound.GetReady}, sound.Placed{At: 4 * time.Second, Clip: sound.GetReady}, sound.Placed{At: 5 * time.Second, Clip: sound.WorkStarts})
	time.Sleep(1050 * ms) // the second pip sounds
	server.Stop()
	time.Sleep(4950 * ms)
	if rings.Load() != 2 || l.Notice() != (Notice{DeviceLost, true}) {
		t.Errorf("the bell rang %d times, notice %v", rings.Load(), l.Notice())
	}
	if err := server.Restart(); err != nil {
		t.Fatal(err)
	}
	waitFor(t, l, playing, asleep)
	if n := l.Notice(); n != (Notice{}) {
		t.Errorf("notice %v though the server is back", n)
	}
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	time.Sleep(time.Second)
	l.Play(sound.Placed{At: time.Second, Clip: sound.GetReady}, sound.Placed{At: 2 * time.Second, Clip: sound.GetReady})
	time.Sleep(3 * time.Second)
	l.Close()
	if n := pulsetest.Onsets(stopRecording(t, rec), 0.005, sound.Position(300*ms)); len(n) != 2 || rings.Load() != 2 {
		t.Errorf("%d cues were heard from the server that came back, want 2; the bell rang %d times, want 2", len(n), rings.Load())
	}
}

// inProcess runs a test in a process, and so with a server, of its own.
func inProcess(t *testing.T) {
	c := exec.Command(os.Args[0], "-test.run", "^"+strings.ReplaceAll(t.Name(), "/", "$/^")+"$", "-test.v", fmt.Sprintf("-long=%t", *long), fmt.Sprintf("-minutes=%d", *minutes), "-test.timeout=2h")
	c.Env = slices.DeleteFunc(os.Environ(), func(v string) bool { return strings.HasPrefix(v, "PULSE_") })
	c.Env = append(c.Env, alone+"=1")
	out, err := c.CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%s", err, out)
	}
	t.Logf("%s", out)
}

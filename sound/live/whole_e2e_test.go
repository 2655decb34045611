//go:build e2e

package live

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"runtime"
	"strconv"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// minutes is how long a whole session of the recorded ones is.
var minutes = flag.Int("minutes", 40, "length of the sessions that -long records, in minutes")

// whole returns the text of a session of about so many minutes: hops and lunges
// with their clicks, calls, changes and rests.
func whole(minutes int) string {
	const round = 84 * time.Second
	rounds := max(2, int(time.Duration(minutes)*time.Minute/round))
	return fmt.Sprintf(`lead_in: 10s
blocks:
  - title: Up
    rounds: %d
    rest: 20s
    change: 6s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 700ms}
      - {name: Split squat, reps_per_side: 2, tempo: 2-1-1, switch: 4s}
      - {name: Footwork, time: 20s, calls: [left, right, back], call_every: 2s-4s}
`, rounds)
}

// TestRecordedWholeSession records a session from start to end and holds every
// cue against its moment on the host's clock: on a machine as it is, on one whose
// every core has another program at it, in a process that is stopped for half
// a minute now and then, and in one whose player uses keys all the time.
func TestRecordedWholeSession(t *testing.T) {
	for _, trouble := range []struct {
		name string
		with func(m *moments, end time.Duration)
	}{
		{"calm", func(m *moments, end time.Duration) { m.wait(end) }},
		{"loaded", func(m *moments, end time.Duration) { burden(m.t); m.wait(end) }},
		{"stopped", stopNowAndThen},
		{"keys", keysNowAndThen},
	} {
		t.Run(trouble.name, func(t *testing.T) {
			if !*long {
				t.Skipf("takes %d minutes; run with -long", *minutes)
			}
			if os.Getenv(alone) == "" {
				inProcess(t)
				return
			}
			p := soundtest.Planned(t, whole(*minutes))
			rec, err := server.Record()
			if err != nil {
				t.Fatal(err)
			}
			m := &moments{t: t, live: New(Options{Volume: 1}), opts: sound.Options{Pips: 3, Clicks: true, Seed: 7}}
			waitFor(t, m.live, playing, asleep)
			time.Sleep(2500 * ms)
			used, began := processor(), time.Now()
			m.begin(p, "from the start", p.Total)
			trouble.with(m, p.Total)
			m.do(engine.Stop, "", 0)
			t.Logf("processor time: %.2f %% of a core", 100*(processor()-used).Seconds()/time.Since(began).Seconds())
			m.live.Close()
			report(t, m.due, rec, m.live.epoch)
		})
	}
}

// burden keeps every core busy with another program until the test ends.
func burden(t *testing.T) {
	for range runtime.NumCPU() {
		c := exec.Command("sh", "-c", "while :; do :; done")
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { c.Process.Kill(); c.Wait() })
	}
}

// stopNowAndThen stops this process for half a minute every two, and goes on.
func stopNowAndThen(m *moments, end time.Duration) {
	for begun := time.Now(); time.Since(begun) < end && m.driven.View().Phase != engine.Over; {
		m.wait(time.Minute + rand.N(30*time.Second))
		stopped := time.Now()
		c := exec.Command("sh", "-c", "kill -STOP $0; sleep 30; kill -CONT $0", strconv.Itoa(os.Getpid()))
		if err := c.Start(); err != nil {
			m.t.Fatal(err)
		}
		for time.Since(stopped) < 30*time.Second {
			m.wait(50 * ms)
		}
		if err := c.Wait(); err != nil {
			m.t.Error(err)
		}
		m.wait(rand.N(5 * time.Second))
		m.do(engine.Resume, "after a stop", end)
	}
}

// keysNowAndThen ends sets, skips, pauses and resumes.
func keysNowAndThen(m *moments, end time.Duration) {
	for begun := time.Now(); time.Since(begun) < end && m.driven.View().Phase != engine.Over; {
		m.wait(5*time.Second + rand.N(20*time.Second))
		switch rand.N(4) {
		case 0:
			m.do(engine.Pause, "", end)
			m.wait(rand.N(10 * time.Second))
			m.do(engine.Resume, "resumed", end)
		case 1:
			m.do(engine.Back, "back", end)
		case 2:
			m.do(engine.Skip, "skipped", end)
		default:
			m.do(engine.Finish, "finished", end)
		}
	}
}

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

// moments drives runs under a recording and notes, as one of their listeners,
// for what moment on the host's clock each cue is.
type moments struct {
	t      *testing.T
	live   *Sound
	opts   sound.Options
	due    []due
	driven *enginetest.Drive
	plan   *plan.Plan

	clock  func() time.Duration // the run's
	offset time.Duration        // the host time of its zero
	seen   time.Duration        // on it, when the clock was last looked at
	phase  engine.Phase
	what   string        // was done last
	upto   time.Duration // from then on cues are due
}

// due is a cue and the moment it is for.
type due struct {
	at   time.Duration
	clip *sound.Clip
	what string

	byKey bool // at's moment is that of a key
}

// begin begins a run of p; its cues up to length are due.
func (m *moments) begin(p *plan.Plan, what string, length time.Duration) {
	m.clock, m.plan = enginetest.Since(1), p
	m.offset = time.Duration(math.MaxInt64)
	for range 1000 { // at least one of them is not held up between the two readings
		m.offset = min(m.offset, -(m.clock() - m.live.real()))
	}
	m.live.Follow(p, m.opts, m.clock, 1)
	m.driven = enginetest.New(p, engine.Options{CountIn: 2 * time.Second, Seed: m.opts.Seed}, m.clock, m.live, m)
	m.seen = m.clock()
	m.do(engine.Start, what, length)
}

// Heard implements engine.Listener.
func (m *moments) Heard(events []engine.Event, v engine.View) {
	if asPlaced(events, m.phase) {
		m.phase = v.Phase
		return
	}
	m.phase = v.Phase
	now := m.offset + viewedAt(events[len(events)-1], v)
	m.due = slices.DeleteFunc(m.due, func(d due) bool { return d.at+d.clip.Duration()+latency > now })
	for c := range sound.Timeline(m.plan, v, m.opts) {
		if c.At <= m.upto {
			m.due = append(m.due, due{now + c.At, c.Clip, m.what, c.At == 0})
		}
	}
}

// do acts; what is to be heard within length from then on is due.
func (m *moments) do(a engine.Action, what string, length time.Duration) {
	m.what, m.upto = what, length
	m.look()
	m.driven.Do(a)
}

// act acts and lets time pass until what is due has been heard.
func (m *moments) act(a engine.Action, what string, length time.Duration) {
	m.do(a, what, length)
	m.wait(length + 700*ms)
}

// look brings the run up to the present; one that was not looked at for long
// pauses, as it does under its host.
func (m *moments) look() {
	now := m.clock()
	if now-m.seen > 2*time.Second {
		m.driven.Gap(m.seen)
	}
	m.seen = now
	m.driven.Tick()
}

// wait lets time pass.
func (m *moments) wait(d time.Duration) {
	for end := time.Now().Add(d); time.Now().Before(end); time.Sleep(min(50*ms, time.Until(end))) {
		m.look()
	}
}

func TestRecordedFirstMoments(t *testing.T) {
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 3, rest: 40s, exercises: [{name: Hops, time: 6s}]}]\n")
	rec, err := server.Record()
	if err != nil {
		t.Fatal(err)
	}
	m := &moments{t: t, live: New(Options{Volume: 1}), opts: sound.Options{Pips: 3}}
	waitFor(t, m.live, playing, asleep)
	time.Sleep(2500 * ms)
	for range 3 {
		m.begin(p, "lead-in", 5*time.Second)
		m.wait(5700 * ms)
		m.act(engine.Stop, "", 2500*ms)
	}
	m.begin(p, "lead-in", 5*time.Second)
	m.wait(5700 * ms)
	m.act(engine.Skip, "skip", 38200*ms) // into the rest, 1.8 s to go with one pip left...
	m.act(engine.Pause, "", 4*time.Second)
	m.act(engine.Resume, "resumed", 1500*ms)
	m.act(engine.Pause, "", 3*time.Second)
	m.act(engine.Skip, "skipped while paused", 39*time.Second)
	m.act(engine.Pause, "", 30*time.Second)
	m.act(engine.Resume, "resumed late", 1500*ms)
	m.live.Close()
	report(t, m.due, rec, m.live.epoch)
}

// report holds every cue against the moment it is for, and those that a key
// called for against the moment of the key.
func report(t *testing.T, list []due, rec *pulsetest.Recording, epoch time.Time) {
	t.Helper()
	begun := rec.Begun()
	samples := stopRecording(t, rec)
	first := pulsetest.Onsets(samples, 0.005, sound.Position(50*ms))[0]
	var sounding []pulsetest.Sounding
	var off, keys []float64 // ms
	for _, d := range list {
		expected := first + sound.Position(d.at-list[0].at)
		if expected+d.clip.Len() > len(samples) {
			t.Fatalf("%s at %v was not recorded", d.clip.Name, d.at)
		}
		at := pulsetest.Locate(samples, d.clip.Samples(), expected, sound.Position(100*ms))
		sounding = append(sounding, pulsetest.Sounding{At: at, Clip: d.clip.Samples()})
		off = append(off, float64(at-expected)/44.1)
		if d.byKey {
			keys = append(keys, float64(begun.Add(sound.SampleRate.D(at)).Sub(epoch.Add(d.at)))/1e6)
		}
	}
	shares := pulsetest.Shares(samples, sounding)
	mid, torn, worst := median(off), 0, []float64{}
	for i, d := range list {
		worst = append(worst, math.Abs(off[i]-mid))
		if shares[i] < 0.97 {
			torn++
		}
		if worst[i] > 0.5 || shares[i] < 0.97 {
			t.Logf("%9.3fs %-16s %-22s off %+8.3f ms, %3.0f %% heard", d.at.Seconds(), d.clip.Name, d.what, off[i]-mid, 100*shares[i])
		}
	}
	tenth := max(3, len(off)/10)
	drift := median(off[len(off)-tenth:]) - median(off[:tenth])
	slices.Sort(worst)
	t.Logf("%d cues: off by %.3f ms at the 95th percentile, %.3f ms at most; drift %.3f ms; %d torn", len(worst), worst[len(worst)*95/100], worst[len(worst)-1], drift, torn)
	if len(keys) > 0 {
		t.Logf("%d cues that a key called for: ready at the server %.1f ms after the key at the median, %.1f ms at most; it plays them %v later", len(keys), median(keys), slices.Max(keys), sinkAhead)
	}
	most, whole := 30.0, 0.5 // generous: what a shared machine does to a short test is not ours
	if *long {
		most, whole = 1, 0.97
	}
	if worst[len(worst)-1] > most || slices.Min(shares) < whole {
		t.Errorf("want every cue within %v ms, and at least %v of it", most, whole)
	}
}

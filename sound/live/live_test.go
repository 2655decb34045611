package live

import (
	"errors"
	"slices"
	"sync"
	"testing"
	"testing/synctest"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/internal/plan"
	"coldfloor/internal/pulsetest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

// simDevice is a device on the bubble's clock that takes 20 ms of samples every
// 20 ms, ahead of which it keeps what otoOutput's buffers keep.
type simDevice struct {
	mu        sync.Mutex
	opened    int
	slow      time.Duration // more than others to open
	opens     error         // what open returns
	suspended bool
	stalled   bool
	failed    error // what err returns
	halted    bool
	ahead     []float32 // not yet taken
	played    []float32
	to        source
	quit      chan struct{}
}

const simBlock = 882 // samples

func (d *simDevice) open(s source) error {
	d.opened++
	if d.opens != nil {
		return d.opens
	}
	if d.opened > 1 {
		return errors.New("it is open")
	}
	time.Sleep(700*time.Millisecond + d.slow)
	d.quit, d.to = make(chan struct{}), s
	go d.run()
	return nil
}

func (d *simDevice) run() {
	tick := time.NewTicker(20 * time.Millisecond)
	defer tick.Stop()
	for {
		select {
		case <-d.quit:
			return
		case <-tick.C:
		}
		d.take()
	}
}

// take lets the device take a block.
func (d *simDevice) take() {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.stalled || d.halted {
		return
	}
	if d.suspended { // what is heard goes on in silence
		d.played = append(d.played, make([]float32, simBlock)...)
		return
	}
	n := min(simBlock, len(d.ahead))
	d.played = append(d.played, d.ahead[:n]...)
	d.ahead = d.ahead[n:]
	d.fill()
}

// fill keeps ahead what otoOutput's buffer keeps.
func (d *simDevice) fill() {
	for keep := sound.Position(playerBuffer); len(d.ahead) < keep; {
		more := make([]float32, keep)
		d.to.took(time.Now(), float64(len(d.ahead)))
		d.to.fill(more)
		d.ahead = append(d.ahead, more...)
	}
}

func (d *simDevice) halt() (n int) {
	d.set(func() { n, d.ahead, d.halted = len(d.ahead), nil, true })
	return n
}

func (d *simDevice) goOn() { d.set(func() { d.halted = false; d.fill() }) }

func (d *simDevice) set(f func()) { d.mu.Lock(); defer d.mu.Unlock(); f() }

func (d *simDevice) suspend() error { d.set(func() { d.suspended = true }); return nil }
func (d *simDevice) resume() error  { d.set(func() { d.suspended = false }); return nil }
func (d *simDevice) steady() bool   { return false }
func (d *simDevice) err() error     { d.mu.Lock(); defer d.mu.Unlock(); return d.failed }
func (d *simDevice) close()         { close(d.quit) }

// heard returns the samples at which sound began.
func (d *simDevice) heard() []int {
	d.mu.Lock()
	defer d.mu.Unlock()
	return pulsetest.Onsets(d.played, 0.001, sound.Position(40*ms))
}

// from returns what was played from sample n on.
func (d *simDevice) from(n int) []float32 {
	d.mu.Lock()
	defer d.mu.Unlock()
	return slices.Clone(d.played[n:])
}

// sleeps reports whether the device is suspended.
func (d *simDevice) sleeps() bool { d.mu.Lock(); defer d.mu.Unlock(); return d.suspended }

// stage is one run with live sound in a bubble.
type stage struct {
	*enginetest.Drive
	live   *Sound
	device *simDevice
	begun  time.Time

	mu   sync.Mutex
	rang []time.Duration // since begun
}

// ring is the bell.
func (s *stage) ring() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.rang = append(s.rang, time.Since(s.begun).Round(10*ms))
}

// rings returns when the bell rang.
func (s *stage) rings() []time.Duration {
	s.mu.Lock()
	defer s.mu.Unlock()
	return slices.Clone(s.rang)
}

// perform runs f in a bubble, with a session set up and the device open.
func perform(t *testing.T, p *plan.Plan, o Options, d *simDevice, f func(s *stage)) {
	t.Setenv("SSH_CONNECTION", "")
	synctest.Test(t, func(t *testing.T) {
		s := &stage{device: d}
		o.Volume = 1
		o.Bell = s.ring
		s.live = newLive(o, d)
		time.Sleep(4 * time.Second)
		clock := enginetest.Since(1)
		s.live.Follow(p, sound.Options{Pips: 3}, clock, 1)
		s.Drive = enginetest.New(p, engine.Options{CountIn: 3 * time.Second}, clock, s.live)
		s.begun = time.Now()
		s.Do(engine.Start)
		f(s)
		s.live.Close()
	})
}

// until ticks the run as a host does, up to d after its start.
func (s *stage) until(d time.Duration) {
	for time.Since(s.begun) < d {
		time.Sleep(min(100*ms, d-time.Since(s.begun)))
		s.Tick()
	}
}

// spaced holds onsets against times: the first is where it is, the others to
// within 10 samples, a quarter of a millisecond, by which cues of unlike pitch
// take unlike times to swell to what counts as sound.
func spaced(t *testing.T, got []int, times ...float64) {
	t.Helper()
	if len(got) != len(times) {
		t.Fatalf("%d cues were heard, want %d", len(got), len(times))
	}
	for i, at := range times {
		want := got[0] + int((at-times[0])*float64(sound.SampleRate)+0.5)
		if off := got[i] - want; off < -10 || off > 10 {
			t.Errorf("cue %d is off by %d samples", i, off)
		}
	}
}

const hops = `
lead_in: 5s
blocks: [{title: A, rounds: 2, rest: 20s, exercises: [{name: Hops, reps: 4, rep: 1s}]}]
`

func TestLiveCuesStandAsInThePlan(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(34 * time.Second)
		// Ten left is two knocks 180 ms apart, done goes by as one.
		spaced(t, d.heard(), 2, 3, 4, 5, 9, 19, 19.18, 26, 27, 28, 29, 33)
		if n := s.live.Notice(); n != (Notice{}) || len(s.rings()) > 0 {
			t.Errorf("notice %v, bell %v", n, s.rings())
		}
	})
}

func TestPauseSilencesAndResumeCountsIn(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(5050 * ms) // work has just started and its cue sounds
		s.Do(engine.Pause)
		s.until(5100 * ms)
		silent := len(d.from(0))
		s.until(20 * time.Second)
		if n := pulsetest.Onsets(d.from(silent-simBlock), 0.001, 1); len(n) > 0 {
			t.Errorf("sounds on after the pause, at %v", n)
		}
		before := len(d.heard())
		s.Do(engine.Resume)
		s.until(25 * time.Second)
		spaced(t, d.heard()[before:], 20, 21, 22, 23)
	})
}

// A key may call for a cue at any moment of a run: the device stays awake, for
// one that was suspended is tens of milliseconds late. After ten minutes without
// a sign of life it sleeps all the same.
func TestOnlyALongForgottenRunSleeps(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(7 * time.Second)
		s.Do(engine.Pause)
		s.until(10 * time.Minute)
		if d.sleeps() {
			t.Error("the device sleeps while the player may come back")
		}
		s.until(11 * time.Minute)
		if !d.sleeps() {
			t.Error("the device plays silence for a player who is gone")
		}
		before := len(d.heard())
		s.Do(engine.Resume)
		s.until(11*time.Minute + 5*time.Second)
		// Its first pip, a moment after it wakes, is off by what a device takes.
		spaced(t, d.heard()[before+1:], 661, 662, 663)
	})
}

func TestAKeyStartsTheRestAtOnce(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(7333 * ms)
		before := len(d.heard())
		s.Do(engine.Finish)
		s.until(28 * time.Second)
		spaced(t, d.heard()[before:], 7.333, 17.333, 17.513, 24.333, 25.333, 26.333, 27.333)
	})
}

func TestALongRestIsToTheSample(t *testing.T) {
	d := &simDevice{}
	p := soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, rounds: 2, rest: 75s, exercises: [{name: Hops, reps: 4, rep: 1s}]}]\n")
	perform(t, p, Options{}, d, func(s *stage) {
		s.until(12 * time.Second)
		if d.sleeps() {
			t.Error("the device sleeps in a rest that a key may end")
		}
		s.until(90 * time.Second)
		spaced(t, d.heard(), 2, 3, 4, 5, 9, 74, 74.18, 81, 82, 83, 84, 88)
	})
}

func TestStopIsSilent(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(6 * time.Second)
		before := len(d.heard())
		s.Do(engine.Stop)
		s.until(12 * time.Second)
		if n := len(d.heard()); n != before {
			t.Errorf("%d cues after the stop", n-before)
		}
	})
}

func TestSkippingTheLastStepStillSaysDone(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, "lead_in: 5s\nblocks: [{title: A, exercises: [{name: Hops, reps: 9}]}]\n"), Options{}, d, func(s *stage) {
		s.until(8 * time.Second)
		s.Do(engine.Finish)
		s.live.Refresh()
		s.until(30 * time.Second)
		spaced(t, d.heard(), 2, 3, 4, 5, 8)
	})
}

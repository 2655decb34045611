package live

import (
	"errors"
	"slices"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/engine/enginetest"
	"coldfloor/internal/pulsetest"
	"coldfloor/sound"
	"coldfloor/sound/soundtest"
)

func TestWithNoDeviceTheBellTakesOver(t *testing.T) {
	d := &simDevice{opens: errors.New("none")}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(34 * time.Second)
		var got []float64
		for _, r := range s.rings() {
			got = append(got, r.Seconds())
		}
		if want := []float64{2, 3, 4, 5, 9, 19, 26, 27, 28, 29, 33}; !slices.Equal(got, want) {
			t.Errorf("the bell rang at %v, want %v", got, want)
		}
		if n := s.live.Notice(); n != (Notice{NoDevice, true}) {
			t.Errorf("notice %v", n)
		}
	})
}

func TestADeviceThatTakesNothingIsNone(t *testing.T) {
	d := &simDevice{stalled: true}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(6 * time.Second)
		if len(s.rings()) != 4 || s.live.Notice() == (Notice{}) {
			t.Errorf("bell %v, notice %v", s.rings(), s.live.Notice())
		}
	})
}

func TestADeviceMayGoAwayAndComeBack(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(7 * time.Second)
		d.set(func() { d.stalled = true })
		s.until(20 * time.Second)
		if n := s.live.Notice(); n != (Notice{DeviceLost, true}) {
			t.Errorf("notice %v", n)
		}
		if want := []time.Duration{9 * time.Second, 19 * time.Second}; !slices.Equal(s.rings(), want) {
			t.Errorf("the bell rang at %v, want %v", s.rings(), want)
		}
		d.set(func() { d.stalled = false })
		before := len(d.heard())
		s.until(34 * time.Second)
		spaced(t, d.heard()[before:], 26, 27, 28, 29, 33)
		if len(s.rings()) != 2 || s.live.Notice() != (Notice{}) {
			t.Errorf("bell %v, notice %v", s.rings(), s.live.Notice())
		}
	})
}

// A device that takes samples at their pace and plays them to nobody says so:
// the bell takes over until it plays.
func TestADeviceMayTakeSamplesInVain(t *testing.T) {
	d := &simDevice{failed: errors.New("no device")}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(10 * time.Second)
		if n := s.live.Notice(); n != (Notice{NoDevice, true}) {
			t.Errorf("notice %v", n)
		}
		if want := []time.Duration{2 * time.Second, 3 * time.Second, 4 * time.Second, 5 * time.Second, 9 * time.Second}; !slices.Equal(s.rings(), want) {
			t.Errorf("the bell rang at %v, want %v", s.rings(), want)
		}
		d.set(func() { d.failed = nil })
		before := len(d.heard())
		s.until(34 * time.Second)
		spaced(t, d.heard()[before:], 19, 19.18, 26, 27, 28, 29, 33)
		if n := s.live.Notice(); n != (Notice{}) || len(s.rings()) != 5 {
			t.Errorf("notice %v, bell %v", n, s.rings())
		}
	})
}

func TestLostSamplesAreMadeUpFor(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(10010 * ms)
		d.set(func() { d.stalled = true })
		s.until(10310 * ms)
		d.set(func() { d.stalled = false })
		s.until(34 * time.Second)
		got := d.heard()
		// 300 ms were not played, so that in samples all that comes after
		// stands 300 ms earlier.
		spaced(t, append(got[:5:5], got[5:]...), 2, 3, 4, 5, 9, 18.7, 18.88, 25.7, 26.7, 27.7, 28.7, 32.7)
	})
}

// A device that is slow to open is waited for, not opened a second time.
func TestASlowDeviceIsOpenedOnce(t *testing.T) {
	d := &simDevice{slow: 12 * time.Second}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(6 * time.Second)
		if s.live.Notice() == (Notice{}) {
			t.Error("nothing says that there is no sound yet")
		}
		s.until(15 * time.Second)
		if d.opened != 1 || s.live.Notice() != (Notice{}) {
			t.Errorf("opened %d times, notice %v", d.opened, s.live.Notice())
		}
	})
}

func TestMutedOpensNoDevice(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{Muted: true}, d, func(s *stage) {
		s.until(15 * time.Second)
		if d.opened != 0 || len(s.rings()) > 0 || s.live.Notice() != (Notice{}) {
			t.Errorf("opened %d times, bell %v, notice %v", d.opened, s.rings(), s.live.Notice())
		}
		s.live.SetMuted(false)
		s.until(34 * time.Second)
		if n := len(d.heard()); n < 6 {
			t.Errorf("%d cues were heard once sound was on", n)
		}
	})
}

func TestMuteAndUnmute(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(2500 * ms)
		s.live.SetMuted(true)
		s.until(4500 * ms)
		s.live.SetMuted(false)
		s.until(8 * time.Second)
		spaced(t, d.heard(), 2, 5)
	})
}

func TestOverSSHTheBellTakesOver(t *testing.T) {
	d := &simDevice{}
	var rings atomic.Int32
	t.Setenv("SSH_CONNECTION", "192.0.2.1 1 192.0.2.2 22") // addresses for documentation, RFC 5737
	synctest.Test(t, func(t *testing.T) {
		l := newLive(Options{Volume: 1, Bell: func() { rings.Add(1) }}, d)
		l.Play(sound.Placed{At: time.Second, Clip: sound.GetReady}, sound.Placed{At: 2 * time.Second, Clip: sound.Lowering})
		time.Sleep(3 * time.Second)
		if d.opened != 0 || rings.Load() != 1 || l.Notice() == (Notice{}) {
			t.Errorf("opened %d times, rang %d times, notice %v", d.opened, rings.Load(), l.Notice())
		}
		l.Close()
	})
}

func TestCloseLetsTheLastCueEnd(t *testing.T) {
	d := &simDevice{}
	perform(t, soundtest.Planned(t, hops), Options{}, d, func(s *stage) {
		s.until(33 * time.Second)
		closed := time.Now()
		s.live.Close()
		if took := time.Since(closed); took < sound.Done.Duration() || took > closeWait+lookEvery {
			t.Errorf("closed in %v", took)
		}
		tail := d.from(len(d.from(0)) - sound.Position(100*ms))
		if n := pulsetest.Onsets(tail, 0.001, 1); len(n) > 0 {
			t.Error("the last cue was cut short")
		}
	})
}

func TestFasterRunsAreHeardFaster(t *testing.T) {
	d := &simDevice{}
	p := soundtest.Planned(t, hops)
	t.Setenv("SSH_CONNECTION", "")
	synctest.Test(t, func(t *testing.T) {
		l := newLive(Options{Volume: 1}, d)
		time.Sleep(2 * time.Second)
		clock := enginetest.Since(4)
		l.Follow(p, sound.Options{}, clock, 4)
		r := enginetest.New(p, engine.Options{}, clock, l)
		r.Do(engine.Start)
		for range 90 {
			time.Sleep(100 * ms)
			r.Tick()
		}
		spaced(t, d.heard(), 1.25, 2.25, 4.75, 4.93, 7.25, 8.25)
		l.Close()
	})
}

// A machine that sleeps for a second pauses no run, but the run's clock goes on in
// the sleep and the host's may not: what comes after stands to the run's.
func TestAShortSleepMovesWhatIsToCome(t *testing.T) {
	d := &simDevice{}
	t.Setenv("SSH_CONNECTION", "")
	synctest.Test(t, func(t *testing.T) {
		l := newLive(Options{Volume: 1}, d)
		time.Sleep(2*time.Second + 5*ms) // never at the moment at which the device takes a block
		slept, clock := time.Duration(0), enginetest.Since(1)
		now := func() time.Duration { return clock() + slept }
		p := soundtest.Planned(t, hops)
		l.Follow(p, sound.Options{Pips: 3}, now, 1)
		r := enginetest.New(p, engine.Options{}, now, l)
		r.Do(engine.Start)
		for clock() < 33*time.Second {
			time.Sleep(100 * ms)
			if clock() == 6*time.Second {
				slept = time.Second
			}
			r.Tick()
		}
		// The set ends at 9 s by the run's clock.
		spaced(t, d.heard(), 2, 3, 4, 5, 8, 18, 18.18, 25, 26, 27, 28, 32)
		l.Close()
	})
}

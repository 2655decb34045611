package sound

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// left streams n samples and returns their left channel.
func left(s *Scheduler, n int) []float64 {
	b := make([][2]float64, n)
	s.Stream(b)
	out := make([]float64, n)
	for i, v := range b {
		out[i] = v[0]
	}
	return out
}

// TestClipsAreMixedAtTheirExactSamples mixes clips the plain way and compares.
func TestClipsAreMixedAtTheirExactSamples(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const length = 30000
		clips := Cues()
		s, want := NewScheduler(), make([]float64, length)
		for range rapid.IntRange(0, 8).Draw(t, "clips") {
			at := rapid.IntRange(0, length).Draw(t, "at")
			c := rapid.SampledFrom(clips).Draw(t, "clip")
			if got := s.Place(at, c); got != at {
				t.Fatalf("placed at %d, want %d", got, at)
			}
			for i, v := range c.Samples() {
				if at+i < length {
					want[at+i] += float64(v)
				}
			}
		}
		for s.Pos() < length {
			pos, n := s.Pos(), min(length-s.Pos(), rapid.IntRange(1, 5000).Draw(t, "block"))
			if skip := s.Skip(n); skip > 0 {
				for i := range skip {
					if want[pos+i] != 0 {
						t.Fatalf("skipped sound at %d", pos+i)
					}
				}
				continue
			}
			for i, v := range left(s, n) {
				if math.Abs(v-want[pos+i]) > 1e-6 {
					t.Fatalf("sample %d is %v, want %v", pos+i, v, want[pos+i])
				}
			}
		}
	})
}

func TestAClipThatIsLateBeginsAtOnce(t *testing.T) {
	s := NewScheduler()
	left(s, 1000)
	if at := s.Place(10, GetReady); at != 1000 {
		t.Errorf("placed at %d, want 1000", at)
	}
	if got := left(s, 3); got[2] != float64(GetReady.Samples()[2]) {
		t.Errorf("got %v", got)
	}
}

func TestWithdrawAfter(t *testing.T) {
	s := NewScheduler()
	s.Place(100, GetReady)
	s.Place(9999, GetReady)
	s.Place(10000, WorkStarts)
	s.Place(20000, WorkStarts)
	s.WithdrawAfter(10000)
	left(s, 9999)
	left(s, len(GetReady.Samples()))
	if n := s.Silence(math.MaxInt); n != math.MaxInt {
		t.Errorf("after the last clip there is %d samples of silence", n)
	}
}

func TestCutFadesWithoutAClick(t *testing.T) {
	s := NewScheduler()
	s.Place(0, WorkStarts)
	before := left(s, 3000)
	s.Cut()
	after := left(s, 3*fadeLength)
	last, steepest := before[len(before)-1], 0.0
	for _, v := range after {
		steepest, last = max(steepest, math.Abs(v-last)), v
	}
	if steepest > 0.3 {
		t.Errorf("the cut steps by %.2f", steepest)
	}
	for i, v := range after[fadeLength:] {
		if v != 0 {
			t.Fatalf("sounds %d samples after the fade", i)
		}
	}
	if s.Silence(1) != 1 {
		t.Error("the clip still plays")
	}
}

func TestVolume(t *testing.T) {
	s := NewScheduler()
	s.SetVolume(0.25)
	left(s, 2*fadeLength)
	s.Place(0, WorkStarts)
	at := s.Pos()
	for i, v := range left(s, 2000) {
		if want := 0.25 * float64(WorkStarts.Samples()[i]); math.Abs(v-want) > 1e-6 {
			t.Fatalf("sample %d at a quarter of the volume is %v, want %v", at+i, v, want)
		}
	}
	for _, v := range []float64{-1, 2} {
		s.SetVolume(v)
		if s.volume < 0 || s.volume > 1 {
			t.Errorf("volume %v came to be %v", v, s.volume)
		}
	}
}

func TestMutingDoesNotClick(t *testing.T) {
	s := NewScheduler()
	s.Place(0, WorkStarts)
	last := left(s, 3000)[2999]
	s.SetVolume(0)
	for i, v := range left(s, 2*fadeLength) {
		if math.Abs(v-last) > 0.3 {
			t.Fatalf("step of %.2f at %d", v-last, i)
		}
		last = v
	}
	if last != 0 {
		t.Error("still sounds")
	}
}

// TestRewindStreamsTheSameAgain goes back and forth at random: what is streamed
// again is what was streamed before.
func TestRewindStreamsTheSameAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const length = 60000
		fresh := func() *Scheduler {
			s := NewScheduler()
			for i, c := range Cues() {
				s.Place(i*3500, c)
			}
			return s
		}
		want, s := left(fresh(), length), fresh()
		for s.Pos() < length {
			pos, n := s.Pos(), min(length-s.Pos(), rapid.IntRange(1, 20000).Draw(t, "block"))
			for i, v := range left(s, n) {
				if math.Abs(v-want[pos+i]) > 1e-9 {
					t.Fatalf("sample %d is %v, want %v", pos+i, v, want[pos+i])
				}
			}
			if rapid.Bool().Draw(t, "rewind") {
				s.Rewind(rapid.IntRange(0, n/2).Draw(t, "back"))
			}
		}
	})
}

func TestCutAfterRewindGoesOnWithoutAStep(t *testing.T) {
	s := NewScheduler()
	s.Place(0, WorkStarts)
	played := left(s, 5000)[:3000]
	s.Rewind(2000)
	s.Cut()
	last, steepest := played[2999], 0.0
	for _, v := range left(s, 2*fadeLength) {
		steepest, last = max(steepest, math.Abs(v-last)), v
	}
	if steepest > 0.3 || last != 0 {
		t.Errorf("steps by %.2f and ends at %v", steepest, last)
	}
}

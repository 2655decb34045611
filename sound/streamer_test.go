package sound

import (
	"testing"
	"time"

	"github.com/gopxl/beep/v2"

	"coldfloor/sound/soundtest"
)

func TestEveryCueIsAStreamer(t *testing.T) {
	for _, c := range Cues() {
		t.Run(c.Name, func(t *testing.T) {
			soundtest.AssertStreamer(t, func() beep.Streamer { return c.Streamer() }, len(c.Samples()))
		})
	}
}

func TestSchedulerIsAStreamer(t *testing.T) {
	soundtest.AssertStreamer(t, func() beep.Streamer { return NewScheduler() }, -1)
	soundtest.AssertStreamer(t, func() beep.Streamer {
		s := NewScheduler()
		s.SetVolume(0.5)
		s.Place(3, WorkStarts)
		s.Place(5000, GetReady)
		s.Place(Position(2*time.Second), Done)
		return s
	}, -1)
}

func TestClipStreamerSeeks(t *testing.T) {
	s := Done.Streamer()
	if err := s.Seek(100); err != nil || s.Position() != 100 {
		t.Fatal(err, s.Position())
	}
	var b [1][2]float64
	if s.Stream(b[:]); b[0][0] != float64(Done.Samples()[100]) || b[0][1] != b[0][0] {
		t.Errorf("sample 100 is %v, want %v", b[0], Done.Samples()[100])
	}
	for _, p := range []int{-1, s.Len() + 1} {
		if s.Seek(p) == nil || s.Position() != 101 {
			t.Errorf("sought to %d", p)
		}
	}
}

package pulsetest

import (
	"math"
	"slices"
	"testing"
)

// clip is 100 ms of a swelling 880 Hz tone.
func clip() []float32 {
	c := make([]float32, Rate/10)
	for i := range c {
		c[i] = float32(math.Sin(2*math.Pi*880*float64(i)/Rate) * math.Sin(math.Pi*float64(i)/float64(len(c))))
	}
	return c
}

func TestLocateFindsTheSample(t *testing.T) {
	c := clip()
	for _, at := range []int{0, 1, 4999, 30000} {
		samples := make([]float32, Rate)
		copy(samples[at:], c)
		if got := Locate(samples, c, at+200, 400); got != at {
			t.Errorf("a clip at %d was found at %d", at, got)
		}
	}
}

func TestOnsets(t *testing.T) {
	c := clip()
	samples := make([]float32, Rate)
	copy(samples[1000:], c)
	copy(samples[20000:], c)
	got := Onsets(samples, 0.01, 1000)
	if len(got) != 2 || got[0] < 1000 || got[0] > 1040 || got[1]-got[0] != 19000 {
		t.Errorf("got %v, want two onsets 19000 apart, the first just after 1000", got)
	}
	if got := Onsets(samples, 2, 1000); !slices.Equal(got, nil) {
		t.Errorf("silence has onsets %v", got)
	}
}

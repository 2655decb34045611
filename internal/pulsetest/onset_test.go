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

// Two clips overlap, and a third has lost a tenth in its middle.
func TestSharesSayWhatIsMissing(t *testing.T) {
	c := clip()
	list := []Sounding{{1000, c}, {3000, c}, {20000, c}}
	samples := make([]float32, Rate)
	for i, s := range list {
		for k, v := range c {
			if i < 2 || k < len(c)/2 || k >= len(c)*6/10 {
				samples[s.At+k] += v
			}
		}
	}
	got := Shares(samples, list)
	if got[0] < 0.999 || got[1] < 0.999 || got[2] > 0.9 || got[2] < 0.7 {
		t.Errorf("got %v, want the third alone to lack a little", got)
	}
}

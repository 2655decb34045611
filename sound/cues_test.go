package sound

import (
	"math"
	"math/cmplx"
	"testing"
	"time"

	"gonum.org/v1/gonum/dsp/fourier"

	"coldfloor/sessions"
)

// bound is the highest fundamental, in Hz: ISO 24500:2010 (scope) and JIS S
// 0013:2011 keep signals at or below it so that older ears hear them.
const bound = 2500

// power returns the share of a clip's power above bound, and the frequency at
// which most of it is, in Hz.
func power(samples []float32) (above, peak float64) {
	in := make([]float64, len(samples))
	for i, v := range samples {
		in[i] = float64(v)
	}
	fft := fourier.NewFFT(len(in))
	var all, high, most float64
	for i, c := range fft.Coefficients(nil, in) {
		hz, p := fft.Freq(i)*float64(SampleRate), cmplx.Abs(c)*cmplx.Abs(c)
		all += p
		if hz > bound {
			high += p
		}
		if p > most {
			most, peak = p, hz
		}
	}
	return high / all, peak
}

func TestEveryCueKeepsItsPowerBelowTheBound(t *testing.T) {
	for _, c := range Cues() {
		above, peak := power(c.Samples())
		if peak > bound {
			t.Errorf("%s peaks at %.0f Hz, over %d", c.Name, peak, bound)
		}
		if above > 0.03 {
			t.Errorf("%s has %.1f %% of its power over %d Hz", c.Name, 100*above, bound)
		}
	}
}

// TestNotesAreInTune holds each pitch used against equal temperament over A4 =
// 440 Hz (ISO 16:1975, formula from memory); the expected figures are from a
// printed table of note frequencies, from memory.
func TestNotesAreInTune(t *testing.T) {
	for semitone, hz := range map[int]float64{a4: 440, e5: 659.26, a5: 880, cs6: 1108.73, e6: 1318.51, a6: 1760} {
		if got := frequency(semitone); math.Abs(got-hz) > 0.005 {
			t.Errorf("semitone %d is %.3f Hz, want %.2f", semitone, got, hz)
		}
		_, peak := power(newCue("tone", loud, note{semitone, time.Second}).Samples())
		if math.Abs(peak-hz) > 1 {
			t.Errorf("semitone %d sounds at %.1f Hz, want %.2f", semitone, peak, hz)
		}
	}
}

// TestNoCueClicks bounds what a click would raise: the first and last sample,
// and the steepest step, which for a pure tone of 2π·f/rate·amplitude an
// abrupt edge exceeds.
func TestNoCueClicks(t *testing.T) {
	for _, c := range Cues() {
		n := len(c.Samples())
		if c.Samples()[0] != 0 || c.Samples()[n-1] != 0 {
			t.Errorf("%s does not begin and end at rest", c.Name)
		}
		steepest := 0.0
		for i := 1; i < n; i++ {
			steepest = max(steepest, math.Abs(float64(c.Samples()[i]-c.Samples()[i-1])))
		}
		slope := 0.0 // of the sum of the partials, at A6, the highest note
		for k, p := range partials {
			slope += p * float64(k+1)
		}
		limit := slope * 2 * math.Pi * frequency(a6) / float64(SampleRate) * peakOf(c) * 1.3
		if steepest > limit {
			t.Errorf("%s steps by %.3f, over %.3f", c.Name, steepest, limit)
		}
	}
}

func TestRampsAreWithinFiveToTenMilliseconds(t *testing.T) {
	// The bounds are common practice in audio programming, from memory.
	if ramp < 5*time.Millisecond || ramp > 10*time.Millisecond {
		t.Errorf("ramps take %v", ramp)
	}
}

func TestCuesAreAsLoudAsTheyShouldBe(t *testing.T) {
	for _, c := range Cues() {
		peak, calls := peakOf(c), c.Kind != Click
		if calls && (peak < 0.6 || peak > loud) {
			t.Errorf("%s peaks at %.2f", c.Name, peak)
		}
		if !calls && (peak < 0.08 || peak > soft) {
			t.Errorf("the soft %s peaks at %.2f", c.Name, peak)
		}
	}
}

func TestCallTonesEndBeforeTheNextCall(t *testing.T) {
	for d := range sessions.MaxCalls {
		if l := CallTones(d).Duration(); l > sessions.MinCallEvery/2 {
			t.Errorf("the tones of direction %d last %v", d, l)
		}
	}
}

func TestCuesAreShort(t *testing.T) {
	for _, c := range Cues() {
		limit := 700 * time.Millisecond // so that a pip a second apart stays clear
		switch {
		case c == Done:
			limit = 1500 * time.Millisecond
		case c == GetReady:
			limit = 150 * time.Millisecond
		case c.Kind == Click:
			limit = 50 * time.Millisecond
		}
		if d := c.Duration(); d < 20*time.Millisecond || d > limit {
			t.Errorf("%s lasts %v, want 20 ms to %v", c.Name, d, limit)
		}
	}
}

// picture returns a clip as the power in each semitone over each 20 ms, which
// is about what an ear makes of it.
func picture(c *Clip) map[[2]int]float64 {
	const slice = 882
	out, norm := map[[2]int]float64{}, 0.0
	fft := fourier.NewFFT(slice)
	for at := 0; at < len(c.Samples()); at += slice {
		in := make([]float64, slice)
		for i := range in {
			if at+i < len(c.Samples()) {
				in[i] = float64(c.Samples()[at+i])
			}
		}
		for i, v := range fft.Coefficients(nil, in)[1:] {
			semitone := int(math.Round(12 * math.Log2(fft.Freq(i+1)*float64(SampleRate)/440)))
			out[[2]int{at / slice, semitone}] += cmplx.Abs(v)
		}
	}
	for _, v := range out {
		norm += v * v
	}
	for k := range out {
		out[k] /= math.Sqrt(norm)
	}
	return out
}

// TestCuesAreToldApart compares every two cues and calls: 1 would be the same sound.
func TestCuesAreToldApart(t *testing.T) {
	cues := Cues()
	for d := range sessions.MaxCalls {
		cues = append(cues, CallTones(d))
	}
	for i, a := range cues {
		for _, b := range cues[:i] {
			pa, pb := picture(a), picture(b)
			same := 0.0
			for k, v := range pa {
				same += v * pb[k]
			}
			if same > 0.75 {
				t.Errorf("%s and %s are alike to %.2f", a.Name, b.Name, same)
			}
		}
	}
}

func TestCuesHaveNames(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range Cues() {
		if c.Name == "" || seen[c.Name] {
			t.Errorf("%q: empty, or there twice", c.Name)
		}
		seen[c.Name] = true
	}
}

// peakOf returns the largest absolute sample.
func peakOf(c *Clip) float64 {
	p := 0.0
	for _, v := range c.Samples() {
		p = max(p, math.Abs(float64(v)))
	}
	return p
}

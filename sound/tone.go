package sound

import (
	"math"
	"time"
)

// ramp is how long a tone takes to come and to go. An abrupt start or stop of
// a tone clicks; ramps of 5 to 10 ms avoid it (common in audio programming).
const ramp = 8 * time.Millisecond

// note is one tone of a cue, or a silence if semitone is rest.
type note struct {
	semitone int // from A4, in equal temperament
	length   time.Duration
}

// rest is the semitone of a silence.
const rest = math.MinInt

// The pitches in use, in semitones from A4.
const (
	a4  = 0
	b4  = 2
	e5  = 7
	fs5 = 9
	a5  = 12
	b5  = 14
	cs6 = 16
	d6  = 17
	e6  = 19
	fs6 = 21
	a6  = 24
)

// frequency returns the pitch, in Hz, of a semitone from A4 = 440 Hz (ISO
// 16:1975) in equal temperament.
func frequency(semitone int) float64 { return 440 * math.Pow(2, float64(semitone)/12) }

// partials are the strengths of a tone's fundamental and of its first two
// overtones: enough of them to be heard through music, little enough that
// nearly all the sound is in the fundamental, where older ears hear it.
var partials = [...]float64{0.86, 0.10, 0.04}

// synthesise plays notes one after another at a loudness from 0 to 1.
func synthesise(loudness float64, notes []note) []float32 {
	out := make([]float32, lengthOf(notes))
	from := 0
	for _, n := range notes {
		to := from + Position(n.length)
		if n.semitone != rest {
			fill(out[from:to], frequency(n.semitone), loudness)
		}
		from = to
	}
	return out
}

// lengthOf returns how many samples notes take.
func lengthOf(notes []note) int {
	n := 0
	for _, v := range notes {
		n += Position(v.length)
	}
	return n
}

// fill writes one tone with a raised-cosine ramp at both ends.
func fill(samples []float32, hz, loudness float64) {
	edge := Position(ramp)
	for i := range samples {
		phase := 2 * math.Pi * hz * float64(i) / float64(SampleRate)
		v := 0.0
		for k, p := range partials {
			v += p * math.Sin(float64(k+1)*phase)
		}
		samples[i] = float32(v * loudness * swell(min(i, len(samples)-1-i), edge))
	}
}

// swell rises from 0 to 1 over edge samples as half a cosine.
func swell(i, edge int) float64 {
	if i >= edge {
		return 1
	}
	return (1 - math.Cos(math.Pi*float64(i)/float64(edge))) / 2
}

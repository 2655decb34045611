package live

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"
)

// fitful is a device that is seen to take samples every block of its own time, up
// to so much late.
type fitful struct {
	pace pace
	rng  *rand.Rand
	at   time.Duration // host time of the next block
	took float64
}

const fitfulBlock = 60 * ms

// run lets the device run for d, each block seen up to late after it is taken.
func (f *fitful) run(d, late time.Duration) {
	for end := f.at + d; f.at < end; f.at += fitfulBlock {
		f.pace.saw(f.at+time.Duration(f.rng.Int64N(int64(late))), f.took)
		f.took += samplesIn(fitfulBlock)
	}
}

// holds holds what was learnt against the true line.
func (f *fitful) holds(t *testing.T, when string) {
	t.Helper()
	line, known := f.pace.line()
	if truth := f.took - samplesIn(f.at); !known || math.Abs(line-truth) > samplesIn(5*ms) {
		t.Errorf("%s the line is %.1f ms off, known: %v", when, 1000*(line-truth)/samplesIn(time.Second), known)
	}
}

// A device fills its buffer, takes a fifth of a second to begin, loses a third of
// a second later on, and is seen late all the time: soon after each its true pace
// is known again.
func TestPaceOfAFitfulDevice(t *testing.T) {
	for seed := range uint64(50) {
		f := &fitful{rng: rand.New(rand.NewPCG(seed, 1))}
		f.pace.begin(0, false)
		for f.took < samplesIn(180*ms) { // at once
			f.pace.saw(f.at, f.took)
			f.took += samplesIn(fitfulBlock)
		}
		f.at += 190 * ms
		f.run(1400*ms, 10*ms)
		f.holds(t, "soon after the start")
		f.run(20*time.Second, 10*ms)
		f.holds(t, "later")
		f.at += 333 * ms
		f.run(1200*ms, 10*ms)
		f.holds(t, "after a loss")
	}
}

// A device that keeps its own time loses nothing where the machine is busy: one
// second of late sightings does not move its line.
func TestPaceOfASteadyDeviceOnABusyMachine(t *testing.T) {
	f := &fitful{rng: rand.New(rand.NewPCG(1, 2))}
	f.pace.begin(0, true)
	f.run(10*time.Second, ms)
	f.holds(t, "at rest")
	for range 15 {
		f.run(fitfulBlock, 150*ms)
	}
	f.holds(t, "on a busy machine")
}

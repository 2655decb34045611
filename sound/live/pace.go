package live

import (
	"math"
	"sync"
	"time"

	"coldfloor/sound"
)

// pace learns how a device's samples run against the host's clock, from the
// moments at which the device takes some. A device takes them in blocks and
// never ahead of its time, while a busy machine makes it late: so the line
// that touches the earliest takings from above is the true one. Measured
// against PulseAudio it stands to within 0.3 ms.
type pace struct {
	mu    sync.Mutex
	since time.Duration // host time at which the flow last began
	seen  []taking      // of the last paceWindow
	last  taking
	late  int // takings in a row far below the line

	steady bool // the device loses no samples: late takings tell of a busy machine alone
}

// taking is a moment at which the device had taken so many samples in all.
type taking struct {
	at      time.Duration // host time
	samples float64
}

// How long a flow takes to find its pace, what is looked at to tell it, and
// how much of that there must be.
const (
	paceSettles  = 250 * time.Millisecond
	paceWindow   = 2 * time.Second
	steadyWindow = 10 * time.Second // clocks of 50 parts in a million apart part by half a millisecond in it
	paceTakings  = 5
)

// Samples are lost on the way where a machine is too busy to keep a device
// supplied. The line is then lower from there on: so many takings in a row that
// are so late tell of it.
const (
	lateBy    = float64(sound.SampleRate) * 0.005
	lateInRow = 8
)

// begin forgets what was learnt: the flow begins again at host time now. A
// steady device loses no samples on the way.
func (p *pace) begin(now time.Duration, steady bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.since, p.seen, p.late, p.steady = now, p.seen[:0], 0, steady
}

// saw books that samples had been taken in all by host time now.
func (p *pace) saw(now time.Duration, samples float64) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if samples > p.last.samples {
		p.last = taking{now, samples}
	}
	if now < p.since+paceSettles {
		return
	}
	window := paceWindow
	if p.steady {
		window = steadyWindow
	}
	old := 0
	for old+paceTakings < len(p.seen) && p.seen[old].at < now-window { // some are kept over a time in which none were seen
		old++
	}
	p.seen = append(p.seen[:copy(p.seen, p.seen[old:])], taking{now, samples})
	if p.top()-p.seen[len(p.seen)-1].above() < lateBy {
		p.late = 0
	} else if p.late++; p.late == lateInRow {
		p.late = 0
		p.seen = p.seen[len(p.seen)-lateInRow:]
	}
}

// above returns by how many samples t is ahead of a device that took its first
// at host time 0.
func (t taking) above() float64 { return t.samples - samplesIn(t.at) }

// top returns the line through the earliest of the takings.
func (p *pace) top() float64 {
	best := math.Inf(-1)
	for _, t := range p.seen {
		best = max(best, t.above())
	}
	return best
}

// moved returns when the device last took samples it had not had before.
func (p *pace) moved() time.Duration {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.last.at
}

// line returns how many samples the device has taken at host time 0, were the
// present flow drawn back to it, and whether that is known yet.
func (p *pace) line() (float64, bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(p.seen) < paceTakings {
		return 0, false
	}
	return p.top(), true
}

// rough returns a first estimate of line for now, before it is known: by the last
// taking, or as if the device were to take sample next this moment.
func (p *pace) rough(now time.Duration, next float64) float64 {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.last.at > p.since {
		return p.last.above()
	}
	return next - samplesIn(now)
}

// samplesIn returns t in samples, unrounded.
func samplesIn(t time.Duration) float64 { return t.Seconds() * float64(sound.SampleRate) }

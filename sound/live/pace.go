package live

import (
	"cmp"
	"math"
	"slices"
	"sync"
	"time"

	"coldfloor/sound"
)

// pace learns how a device's samples run against the host's clock, from the
// moments at which the device was seen to have taken some. It takes them in blocks
// and, once it runs, never ahead of its time, while a busy machine makes it late:
// so the line that touches the earliest takings from above is the true one.
type pace struct {
	mu      sync.Mutex
	since   time.Duration // host time at which the flow last began
	seen    []taking      // of the last paceWindow
	last    taking
	settled bool // the device has been seen to run evenly since the flow began
	steady  bool // the device itself says how far it is, and loses no samples
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
	paceWindow   = 4 * time.Second
	steadyWindow = 10 * time.Second // clocks of 50 parts in a million apart part by half a millisecond in it
	paceTakings  = 5
)

// The line is lower from some moment on where a device filled its buffer before
// it began to run, and where samples were lost on the way: two stretches of time,
// one after the other, that agree in it, and are late by so much, tell of it. A
// stretch is an eighth of what is looked at. A smaller loss shows once what was seen
// before it is looked at no more.
const (
	agree     = float64(sound.SampleRate) * 0.005
	lateBy    = float64(sound.SampleRate) * 0.015
	stretches = 8
)

// begin forgets what was learnt: the flow begins again at host time now.
func (p *pace) begin(now time.Duration, steady bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.since, p.seen, p.settled, p.steady = now, p.seen[:0], false, steady
}

// window returns how far back takings are looked at.
func (p *pace) window() time.Duration {
	if p.steady {
		return steadyWindow
	}
	return paceWindow
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
	old := 0
	for old+paceTakings < len(p.seen) && p.seen[old].at < now-p.window() { // some are kept over a time in which none were seen
		old++
	}
	p.seen = append(p.seen[:copy(p.seen, p.seen[old:])], taking{now, samples})
	p.settle(now)
}

// settle compares the last two stretches: if they agree the device runs evenly,
// and what was seen before goes by another line if that is far above theirs.
func (p *pace) settle(now time.Duration) {
	length := p.window() / stretches
	first, second := p.from(now-2*length), p.from(now-length)
	if len(p.seen)-second < paceTakings/2 || second-first < paceTakings/2 {
		return
	}
	before, lately := top(p.seen[first:second]), top(p.seen[second:])
	if math.Abs(before-lately) >= agree {
		return
	}
	p.settled = true
	if top(p.seen[:first])-max(before, lately) >= lateBy {
		p.seen = p.seen[:copy(p.seen, p.seen[first:])]
	}
}

// from returns the index of the first taking at host time t or later.
func (p *pace) from(t time.Duration) int {
	i, _ := slices.BinarySearchFunc(p.seen, t, func(s taking, t time.Duration) int { return cmp.Compare(s.at, t) })
	return i
}

// above returns by how many samples t is ahead of a device that took its first
// at host time 0.
func (t taking) above() float64 { return t.samples - samplesIn(t.at) }

// top returns the line through the earliest of takings.
func top(seen []taking) float64 {
	best := math.Inf(-1)
	for _, t := range seen {
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
	if len(p.seen) < paceTakings || !p.steady && !p.settled {
		return 0, false
	}
	return top(p.seen), true
}

// rough estimates line at a moment while it is not yet known: by the last taking,
// or as if the device were to take sample next at that moment.
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

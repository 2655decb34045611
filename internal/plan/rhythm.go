package plan

import (
	"time"

	"coldfloor/sessions"
)

// RepPhase is a part of one rep. The empty RepPhase is "the rep as a whole",
// if no tempo is given.
type RepPhase string

// The phases of a rep with a tempo, in their order. One that the tempo gives no
// time is passed over.
const (
	Lowering RepPhase = "lowering"
	HoldLow  RepPhase = "hold low" // the pause after lowering
	Rising   RepPhase = "rising"
	HoldHigh RepPhase = "hold high" // the pause after rising
)

// Rhythm is how the reps of one work step follow one another. The zero Rhythm
// has no reps to count.
type Rhythm struct {
	Reps   int            // of the step, both sides of alternate reps counted; 0 for timed work
	Rep    time.Duration  // length of one rep, above zero if there is a rhythm at all
	Tempo  sessions.Tempo // of one rep; the zero Tempo if none is given
	Side   Side           // of the step
	Length time.Duration  // of the step as planned
}

// Beat is one phase of one rep: what a player does at a moment.
type Beat struct {
	Rep    int           // from 1
	Of     int           // reps of the step; 0 for timed work, whose reps nobody counts
	Side   Side          // that the rep is for: left first if reps alternate
	Phase  RepPhase      // empty if no tempo is given
	Start  time.Duration // since the step's start
	Length time.Duration // of the phase, or of the rep if it has none; above zero
}

// End returns when the beat ends, since the step's start.
func (b Beat) End() time.Duration { return b.Start + b.Length }

// RhythmOf returns the rhythm of step s when it is done as e: the exercise as
// written, or a variant of it. A nil e and a step that is not work have none,
// nor has timed work without a tempo.
func RhythmOf(s Step, e *sessions.Exercise) Rhythm {
	if e == nil || s.Kind != Work || s.Reps == 0 && e.Tempo == (sessions.Tempo{}) {
		return Rhythm{}
	}
	r := Rhythm{Reps: s.Reps, Rep: e.Rep, Tempo: e.Tempo, Side: s.Side, Length: s.Length}
	if r.Tempo != (sessions.Tempo{}) {
		r.Rep = r.Tempo.Rep()
	}
	return r
}

// Rhythm returns the rhythm of step i, in the easier variant of its exercise if
// easier is set and there is one.
func (p *Plan) Rhythm(i int, easier bool) Rhythm {
	e := p.Exercise(i)
	if e != nil {
		e = e.In(easier)
	}
	return RhythmOf(p.Steps[i], e)
}

// At returns the beat at a time since the step's start. A time before the
// start is taken as the start. From the step's end on it is the last beat: a
// set that waits for a key counts no more reps than were asked for. Ok is false
// if there is no rhythm.
func (r Rhythm) At(elapsed time.Duration) (b Beat, ok bool) {
	if r.Rep <= 0 || r.Length <= 0 {
		return Beat{}, false
	}
	elapsed = max(0, min(elapsed, r.end()-1))
	n := elapsed / r.Rep
	for b := range r.rep(int(n) + 1) {
		if elapsed < b.End() {
			return b, true
		}
	}
	return Beat{}, false // not reached: the phases of a rep fill it
}

// Beats yields every beat of the step in order. Those of timed work end with
// it, the last one cut short if need be.
func (r Rhythm) Beats(yield func(Beat) bool) {
	if r.Rep <= 0 {
		return
	}
	for n := 1; time.Duration(n-1)*r.Rep < r.end(); n++ {
		for b := range r.rep(n) {
			if b.Start >= r.end() {
				return
			}
			b.Length = min(b.Length, r.end()-b.Start)
			if !yield(b) {
				return
			}
		}
	}
}

// end returns when the last rep ends, since the step's start.
func (r Rhythm) end() time.Duration {
	if r.Reps > 0 {
		return time.Duration(r.Reps) * r.Rep
	}
	return r.Length
}

// rep yields the beats of rep n, from 1.
func (r Rhythm) rep(n int) func(yield func(Beat) bool) {
	return func(yield func(Beat) bool) {
		b := Beat{Rep: n, Of: r.Reps, Side: r.sideOf(n), Start: time.Duration(n-1) * r.Rep, Length: r.Rep}
		if r.Tempo == (sessions.Tempo{}) {
			yield(b)
			return
		}
		for _, part := range [...]struct {
			phase  RepPhase
			length time.Duration
		}{{Lowering, r.Tempo.Lowering}, {HoldLow, r.Tempo.Pause}, {Rising, r.Tempo.Rising}, {HoldHigh, r.Tempo.Top}} {
			if part.length <= 0 {
				continue
			}
			b.Phase, b.Length = part.phase, part.length
			if !yield(b) {
				return
			}
			b.Start += part.length
		}
	}
}

// sideOf returns the side of rep n.
func (r Rhythm) sideOf(n int) Side {
	switch {
	case r.Side != Alternate:
		return r.Side
	case n%2 == 1:
		return Left
	}
	return Right
}

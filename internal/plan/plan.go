// Package plan turns a session into one flat list of timed steps. Preview,
// check, sheet, track and the engine all read that list.
package plan

import (
	"time"

	"coldfloor/sessions"
)

// Kind is what a step is.
type Kind string

// The kinds of step.
const (
	LeadIn Kind = "lead-in" // the countdown before the first work step
	Work   Kind = "work"
	Switch Kind = "switch" // from one side to the other
	Change Kind = "change" // from one exercise of a round to the next
	Rest   Kind = "rest"
)

// Side is which side of the body a work step is for.
type Side string

// The sides. A step that is not work has none, except for a switch, which has
// the side it changes to.
const (
	Left      Side = "left"
	Right     Side = "right"
	Both      Side = "both"
	Alternate Side = "alternate" // one rep a side in turn
)

// Step is one stretch of time with one thing to do in it.
type Step struct {
	Kind          Kind
	Start, Length time.Duration // on the session's clock; Length > 0
	Block         int           // from 1; 0 for the lead-in
	Round         int           // from 1; 0 for the lead-in. A rest carries the block and round it follows
	Exercise      int           // from 1; 0 if the step belongs to no exercise
	Name          string        // the exercise's name; empty if Exercise is 0
	Side          Side          // empty if it does not apply
	Reps          int           // of this step, both sides of alternate reps counted; 0 for timed work
	Set           int           // index into Plan.Sets of the set this work or switch belongs to; -1 for others
	ByHand        bool          // ends only by a key; Length is its paced length
}

// End returns the session time at which the step ends.
func (s Step) End() time.Duration { return s.Start + s.Length }

// Set is one exercise in one round, its two sides counted once.
type Set struct {
	Block, Round, Exercise int // from 1
	First, Last            int // indexes into Plan.Steps of its first and last work step
	Reps, Contacts         int // both sides counted
	Work                   time.Duration
}

// Totals is the dose and the length of a block or of a whole session.
type Totals struct {
	Total, Work, Rest time.Duration
	Change            time.Duration // lead-in, switch and change steps
	Sets              int
	Reps              int // both sides counted
	Contacts          int // foot contacts: reps × contacts of one rep
}

// BlockTotals is one block's part of the plan.
type BlockTotals struct {
	Title  string
	Rounds int
	Start  time.Duration // of its first step
	Totals               // its Rest includes the rest after the block
}

// Plan is a session as a flat list of steps. It is read-only once made.
type Plan struct {
	Session *sessions.Session
	Steps   []Step
	Sets    []Set
	Blocks  []BlockTotals
	Totals
}

// Exercise returns the exercise that step i works on, or nil if the step
// belongs to none.
func (p *Plan) Exercise(i int) *sessions.Exercise {
	if i < 0 || i >= len(p.Steps) || p.Steps[i].Exercise == 0 {
		return nil
	}
	s := p.Steps[i]
	return &p.Session.Blocks[s.Block-1].Exercises[s.Exercise-1]
}

// Length returns how long step i lasts, in its exercise's easier variant if
// easier is set: a variant with a pace of its own makes reps shorter or longer.
func (p *Plan) Length(i int, easier bool) time.Duration {
	s := p.Steps[i]
	if !easier || s.Kind != Work || s.Reps == 0 {
		return s.Length
	}
	return time.Duration(s.Reps) * p.Exercise(i).In(true).Rep
}

// Meant returns the index of the step whose exercise a player means at step i:
// i itself if it belongs to an exercise, otherwise the next work step; -1 if
// there is none.
func (p *Plan) Meant(i int) int {
	if p.Steps[i].Exercise > 0 {
		return i
	}
	return p.NextWork(i)
}

// NextWork returns the index of the first work step after step i, or -1.
func (p *Plan) NextWork(i int) int {
	for j := i + 1; j < len(p.Steps); j++ {
		if p.Steps[j].Kind == Work {
			return j
		}
	}
	return -1
}

// At returns the index of the step that session time t falls in: a step holds
// its start and not its end. It is 0 before the start and the last step from
// the end on.
func (p *Plan) At(t time.Duration) int {
	lo, hi := 0, len(p.Steps)-1
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if p.Steps[mid].Start <= t {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	return lo
}

// Package sessions holds the session file: its types, the strict reader that
// keeps positions, and the sessions that come with the program.
package sessions

import (
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Version is the format version this package reads.
const Version = 1

// Defaults of the format, used if a file leaves a key out.
const (
	DefaultLeadIn = 10 * time.Second
	DefaultChange = 10 * time.Second
	DefaultSwitch = 3 * time.Second
	DefaultRep    = 2 * time.Second
)

// Level is whom a session is written for.
type Level string

// The levels. The empty Level is "not said".
const (
	Beginner     Level = "beginner"
	Intermediate Level = "intermediate"
	Advanced     Level = "advanced"
)

// Part is the place of a block in a session.
type Part string

// The parts.
const (
	WarmUp   Part = "warm-up"
	Main     Part = "main" // default
	CoolDown Part = "cool-down"
)

// Sides is the order in which the sides of a one-sided exercise are worked.
type Sides string

// The orders of sides.
const (
	LeftFirst     Sides = "left-first" // default
	RightFirst    Sides = "right-first"
	SwapEachRound Sides = "swap-each-round" // left first in odd rounds, right first in even ones
	AlternateReps Sides = "alternate-reps"  // one rep a side in turn, with no switch
)

// Finish is what ends a set.
type Finish string

// The ways a set ends.
const (
	ByPace Finish = "pace" // default: by the clock; a key ends it early
	ByHand Finish = "hand" // by a key alone
)

// Session is one training session as a coach wrote it, with every default
// filled in. A Session that Parse returned is valid.
type Session struct {
	Version int           `yaml:"coldfloor"`
	Title   string        `yaml:"title"`
	For     string        `yaml:"for,omitempty"` // whom and when it is for; free text
	Level   Level         `yaml:"level,omitempty"`
	Note    string        `yaml:"note,omitempty"`    // what a player must know before starting
	LeadIn  time.Duration `yaml:"lead_in,omitempty"` // countdown before the first work step
	Blocks  []Block       `yaml:"blocks"`

	Name   string         `yaml:"-"` // the file as the user named it, or a built-in session's name
	Source []byte         `yaml:"-"` // the text it was read from
	Marks  yamlread.Marks `yaml:"-"`
}

// Block is exercises done in rounds.
type Block struct {
	Title     string        `yaml:"title"`
	Part      Part          `yaml:"part,omitempty"`
	Note      string        `yaml:"note,omitempty"`   // what a player must know before starting
	Trains    []string      `yaml:"trains,omitempty"` // qualities, free text
	Rounds    int           `yaml:"rounds,omitempty"` // at least 1
	Rest      time.Duration `yaml:"rest,omitempty"`   // after each round but the last
	RestAfter time.Duration `yaml:"rest_after,omitempty"`
	Change    time.Duration `yaml:"change,omitempty"` // between two exercises of one round
	Exercises []Exercise    `yaml:"exercises"`

	Marks yamlread.Marks `yaml:"-"`
}

// Exercise is what is done and its dose in one round. Exactly one of Reps,
// RepsPerSide, Time and TimePerSide is above zero.
type Exercise struct {
	Name        string        `yaml:"name"`
	Reps        int           `yaml:"reps,omitempty"`
	RepsPerSide int           `yaml:"reps_per_side,omitempty"`
	Time        time.Duration `yaml:"time,omitempty"`
	TimePerSide time.Duration `yaml:"time_per_side,omitempty"`

	Rep      time.Duration  `yaml:"rep,omitempty"` // length of one rep; the tempo's sum if a tempo is given
	Tempo    Tempo          `yaml:"tempo,omitempty"`
	Contacts int            `yaml:"contacts,omitempty"` // foot contacts of one rep
	Cues     []string       `yaml:"cues,omitempty"`     // short, for the screen while working
	How      string         `yaml:"how,omitempty"`      // longer, for the rest before it and the sheet
	Rest     *time.Duration `yaml:"rest,omitempty"`     // before the next exercise of the round, in place of the change; nil: not given
	Sides    Sides          `yaml:"sides,omitempty"`
	Switch   time.Duration  `yaml:"switch,omitempty"` // between the sides
	Finish   Finish         `yaml:"finish,omitempty"`
	Easier   Variant        `yaml:"easier,omitempty"`
	Harder   Variant        `yaml:"harder,omitempty"`
	Load     string         `yaml:"load,omitempty"`
	Floor    Floor          `yaml:"floor,omitempty"`
	Overhead Overhead       `yaml:"overhead,omitempty"`
	Travel   units.Length   `yaml:"travel,omitempty"` // along the floor in one rep; 0: stays in place, or comes back

	Measure Measure `yaml:"measure,omitempty"` // what comes out of a set and is typed by the player; empty: nothing
	Way     string  `yaml:"way,omitempty"`     // how it is measured; free text
	Tries   Tries   `yaml:"tries,omitempty"`

	Calls     []string `yaml:"calls,omitempty"`      // directions called during a timed set, at least two; nil: none
	CallEvery Interval `yaml:"call_every,omitempty"` // zero if there are no Calls

	Marks yamlread.Marks `yaml:"-"`
}

// ContactsWritten reports whether the foot contacts of a rep were given, be it
// as 0. An Exercise that was not read from a file has them given if there are
// any.
func (e *Exercise) ContactsWritten() bool {
	_, written := e.Marks["contacts"]
	return written || e.Contacts > 0
}

// OneSided reports whether the dose is given a side.
func (e *Exercise) OneSided() bool { return e.RepsPerSide > 0 || e.TimePerSide > 0 }

// Tempo is the phases of one rep. The zero Tempo is "none given".
type Tempo struct {
	Lowering, Pause, Rising, Top time.Duration // Top is the pause after rising, 0 if three numbers are given
	Fast                         bool          // the rising is as fast as possible, and Rising what it is taken to last
}

// Rep returns the length of one rep, the sum of the phases.
func (t Tempo) Rep() time.Duration { return t.Lowering + t.Pause + t.Rising + t.Top }

// Floor is the floor an exercise needs. The zero Floor is "not said".
type Floor struct{ Along, Across units.Length }

// OverheadKind is how an exercise uses the space above the player.
type OverheadKind string

// The kinds of overhead space.
const (
	OverheadNone  OverheadKind = "none"  // default: no more than standing
	OverheadReach OverheadKind = "reach" // arms overhead, feet on the floor
	OverheadJump  OverheadKind = "jump"  // a jump with the arms overhead
	OverheadAbove OverheadKind = "above" // a length above the standing height
)

// Overhead is the space above the player that an exercise needs.
type Overhead struct {
	Kind  OverheadKind
	Above units.Length // above the standing height; only for OverheadAbove
}

// Package weeks holds a plan of weeks: the file in which a coach says which
// session stands on which day, and what changes from week to week. It reads
// the file strictly, finds the days, and makes the session of each of them an
// ordinary *sessions.Session.
//
// Where the format leaves room: a name that an entry of grow gives and that
// the session does not have is an error, even if another name of the same
// entry is found; whether an entry changes anything is judged in the weeks in
// which the pattern has its session; a week may be lighter and on hold at
// once; percentages may have up to three decimals.
package weeks

import (
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// Bounds of what a file may hold.
const (
	MaxBytes  = 64 << 10 // of the file
	MaxWeeks  = 52
	MaxADay   = 4   // sessions on one day
	maxList   = 400 // entries of grow, move, away, matches
	maxSlots  = 16  // of one weekday, for only may keep some apart
	maxNames  = 50  // blocks or exercises of one entry of grow
	maxAMatch = 366 // days of one range of matches
)

// Plan is a plan of weeks as a coach wrote it, with every default filled in. A
// Plan that Parse returned is valid, and so is each of its sessions.
type Plan struct {
	Title   string
	For     string
	Level   sessions.Level // of the player; empty: not said
	Starts  units.Date     // first day of week 1
	Count   int            // weeks, 1 to MaxWeeks
	Slots   []Slot         // the pattern of every week, from Monday on and as typed
	Grow    []Grow
	Lighter []Lighter
	Hold    []int   // weeks that add nothing and take nothing away
	Matches []Match // day by day, as typed
	Away    []Range
	Moves   []Move

	Name   string         // the file as the user named it, or a built-in plan's name
	Source []byte         // the text it was read from
	Marks  yamlread.Marks // of the file's own keys

	weeks []Week
	bases map[string]*sessions.Session // by the name written in the file
	made  map[sessionWeek]*sessions.Session
	full  map[sessionWeek]*sessions.Session // of lighter weeks: before anything was taken away
}

// Slot is one session of the week's pattern.
type Slot struct {
	Weekday time.Weekday
	Place   int              // in the list of its weekday, from 1
	Session string           // as written in the file
	At      *units.TimeOfDay // nil: no time is given
	Only    []int            // weeks that have it, in order; nil: all
	Pos     yamlread.Pos     // of its name
}

// Match is one day of competition.
type Match struct {
	Date units.Date
	At   *units.TimeOfDay // nil: no time is given
}

// Range is days from one to another, both counted.
type Range struct{ From, To units.Date }

// Holds reports whether the day is one of the range.
func (r Range) Holds(d units.Date) bool { return r.From <= d && d <= r.To }

// Move takes what the pattern has on one day to another.
type Move struct {
	From, To units.Date
	Pos      yamlread.Pos
}

// Lighter is a week of which only a share is done.
type Lighter struct {
	Week int
	Keep Percent
	Pos  yamlread.Pos
}

// Percent is a percentage in thousandths of one percent.
type Percent int64

// Share returns the percentage as a share of 1.
func (p Percent) Share() float64 { return float64(p) / hundred }

// hundred is 100 %.
const hundred = 100_000

// What is the value that an entry of grow changes.
type What string

// The values that can change.
const (
	Reps   What = "reps" // also those per side
	Time   What = "time" // also that per side
	Rounds What = "rounds"
	Rest   What = "rest" // between the rounds of a block
)

// counted reports whether the value is a number, and not a time in
// nanoseconds.
func (w What) counted() bool { return w == Reps || w == Rounds }

// Grow is one value that changes from week to week. Amounts are numbers for
// reps and rounds and nanoseconds for time and rest.
type Grow struct {
	In        string   // the session, as written in days
	Blocks    []string // titles; nil: every block of part main
	Exercises []string // names; nil: every exercise of the blocks
	What      What

	By      int64   // added at a time; 0 if Percent or Each is given
	Percent Percent // of the value as it stands before this entry
	Every   int     // weeks from one change to the next
	From    int     // the first week that has it
	Until   int     // the last week that adds
	Limit   *int64  // never beyond this, in the direction of the change; nil: none

	Each []int64 // week by week from From, the last one stands; in place of all of those but From

	Pos   yamlread.Pos
	Marks yamlread.Marks

	targets []target
	ok      bool // the entry was read without a problem
}

// target is a value of a session: of a block, or of an exercise of it.
type target struct{ block, exercise int } // indexes; exercise is -1 for a block's own

// IsLighter reports whether the week is a lighter one, and what is kept.
func (p *Plan) IsLighter(week int) (keep Percent, ok bool) {
	if l := p.lighterOf(week); l != nil {
		return l.Keep, true
	}
	return 0, false
}

// lighterOf returns the entry that makes a week lighter, or nil.
func (p *Plan) lighterOf(week int) *Lighter {
	for i := range p.Lighter {
		if p.Lighter[i].Week == week {
			return &p.Lighter[i]
		}
	}
	return nil
}

// IsHold reports whether the week adds nothing.
func (p *Plan) IsHold(week int) bool {
	for _, w := range p.Hold {
		if w == week {
			return true
		}
	}
	return false
}

// IsAway reports whether there is no training on the day.
func (p *Plan) IsAway(d units.Date) bool {
	for _, r := range p.Away {
		if r.Holds(d) {
			return true
		}
	}
	return false
}

// End returns the last day of the last week.
func (p *Plan) End() units.Date { return p.Starts + units.Date(7*p.Count) - 1 }

// WeekOf returns the week that the day falls in, below 1 before the plan and
// above Count after it.
func (p *Plan) WeekOf(d units.Date) int {
	days := int(d - p.Starts)
	if days < 0 {
		return 0
	}
	return days/7 + 1
}

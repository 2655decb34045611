// Package sheet sets a session on paper: a table that a player follows from
// the floor and ticks round by round, with no screen at hand.
//
// Of says once what a sheet says, as a Doc; Markdown, HTML and PDF only render
// it, so that no two of them can differ in what they tell the player.
package sheet

import (
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
)

// Doc is what a sheet says, in the order in which it is read. Every text in it
// is one line, free of control characters.
type Doc struct {
	Language *text.Language // of all that is not the session's own

	Title    string
	About    string // whom it is for and the level; may be empty
	Total    Figure // length of the whole session
	Times    []Time
	Facts    []string // the session's dose, and the room it needs
	Strip    Strip
	Blocks   []Block
	Legend   []string // how to read the table; only what this table needs
	Cautions []string
	Effort   Effort
}

// Figure is a number to be read from afar, and its unit, which may be empty.
type Figure struct{ Value, Unit string }

// String returns the number and its unit in one line.
func (f Figure) String() string { return join(" ", f.Value, f.Unit) }

// Time is how much of the session is work, rest, or what lies between; the
// Kind is that of the strip's parts.
type Time struct {
	Kind plan.Kind
	Mark string // the characters it has in the strip's text
	Text string
}

// Words are those of the sheet in its language.
func (d *Doc) Words() *text.Sheet { return &d.Language.Sheet }

// Strip is the session as a strip of stretches of time. Fractions are of the
// whole length, from 0 to 1.
type Strip struct {
	Parts  []Part
	Blocks []Span // where each block of the Doc lies
	Marks  []Mark // a mark every few minutes
	Text   string // the same in characters, a line of parts and one of block numbers
}

// Part is a stretch of the strip with one kind of step in it.
type Part struct {
	Kind     plan.Kind // plan.Work, plan.Rest, or plan.Change for all other steps
	From, To float64
}

// Span is the place of a block in the strip.
type Span struct {
	Number, Length string
	From, To       float64 // To is before the rest that follows the block
}

// Mark is a time in the strip.
type Mark struct {
	At   float64
	Text string
}

// Block is a block of the session: exercises done in rounds.
type Block struct {
	Number string // counts from 1
	Title  string
	Rounds string // how often its exercises are gone through; empty for once
	Before Rest   // between the block before and this one; zero if there is none
	Facts  []string
	Rows   []Row
}

// Name returns the block's number and title.
func (b *Block) Name() string { return join(" ", b.Number, b.Title) }

// Row is one exercise of a block.
type Row struct {
	ID      string // the block's number and a letter for the exercise, such as 1a
	Name    string
	Cues    []string
	Notes   []Note
	Dose    Figure
	Side    string   // how the dose goes for the sides; empty if it is not given a side
	Details []string // how the dose is done: which side starts, tempo, contacts
	Rounds  []Round  // boxes to tick; none if Tally is given
	Tally   string   // in place of boxes, if there would be too many
	Then    Rest     // after the exercise, within the round or after it; zero if nothing is
}

// Note is a text about an exercise, and what kind of text it is; the
// description of the exercise has no label.
type Note struct{ Label, Text string }

// Round is what there is to tick in one round.
type Round struct {
	Number int
	Boxes  []string // the round's number, and the side if sides are ticked apart: 2L
}

// Rest is time without work.
type Rest struct {
	Figure
	Label string // when it is taken
	Large bool   // a rest, to be read from the floor; else only time to change
}

// Effort asks how hard the session was.
type Effort struct {
	Question string
	Scale    []Grade
	Source   string
	Blanks   []string // what else is to be filled in, except for pain and notes
	Pain     string   // where it hurt and how much
}

// Grade is one number of the effort scale and its words, which may be empty.
type Grade struct{ Number, Words string }

// Package report sets a review out for reading: as plain text, as JSON, as a
// page of HTML that needs nothing else, or as a PDF. All of them, and the
// screen, are made of one Doc, so that they say the same.
package report

import "math"

// Doc is a review that is ready to be set.
type Doc struct {
	Title   string
	About   string // as of when, and of what
	Parts   []Part
	Left    []string // what was left out of it, and why
	Meaning []Fact   // what the figures say, and what they cannot
}

// Part is a squad's table, or one player.
type Part struct {
	ID       string // to be linked to; empty for the first
	Title    string // empty if it is the Doc's
	About    string
	Sections []Section
}

// Section is some figures that belong together. What is empty is left out.
type Section struct {
	Title  string
	Facts  []Fact
	Charts []Chart
	Table  Table
	Notes  []string
}

// Fact is a figure with its name, on a line or some.
type Fact struct {
	Name  string
	Lines []string
}

// Table is rows under a header.
type Table struct {
	Header []string
	Right  []bool // columns of figures; may be short
	Rows   [][]string
	Links  []string // of each row, the Part that tells more; may be empty
}

// Kind is how a chart shows its figures.
type Kind int

// The kinds of charts.
const (
	Columns Kind = iota // from 0 up, one a place
	Spans               // a middle with a lower and an upper end, which may lie below 0
	Lines               // one line a series, through all places
)

// Chart is figures over time. Its places are weeks or days, in order and
// without a gap.
type Chart struct {
	Title string
	Unit  string // of the upright axis
	Time  string // what a place is: "week from" or "day"
	Kind  Kind
	Names []string // of the series of Lines, at most two; else empty
	Spots []Spot
	Note  string // what is drawn how
	Close bool   // the upright axis lies close about the figures and need not hold 0
}

// Spot is the figures of one place.
type Spot struct {
	Label  string    // of the place: a date, year first
	Values []float64 // one; low, middle, high of Spans; one a series of Lines; none if nobody knows
	Open   bool      // more may come to it, or a part is not known: drawn hollow
}

// Known reports whether there is a figure.
func (s Spot) Known() bool { return len(s.Values) > 0 }

// Range returns the ends of the upright axis, 0 among them unless it lies Close
// about the figures, and false if there is nothing to draw.
func (c *Chart) Range() (low, high float64, ok bool) {
	for _, s := range c.Spots {
		for _, v := range s.Values {
			if !ok && c.Close {
				low, high = v, v
			}
			low, high, ok = min(low, v), max(high, v), true
		}
	}
	if ok && c.Close {
		slack := max((high-low)/10, math.Abs(high)/100)
		low, high = low-slack, high+slack
	}
	if ok && high == low {
		high++ // all figures are 0, which is something to show
	}
	return low, high, ok
}

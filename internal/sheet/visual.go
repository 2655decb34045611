package sheet

import (
	"slices"
	"strings"

	"github.com/clipperhouse/uax29/v2/graphemes"
	"golang.org/x/text/unicode/bidi"
)

// visual returns a line in the order in which it is drawn from left to right.
// The library draws characters as they come, so that Hebrew would run the
// wrong way.
func visual(line string) string {
	if !strings.ContainsFunc(line, rightToLeft) {
		return line
	}
	var p bidi.Paragraph
	if _, err := p.SetString(line); err != nil {
		return line
	}
	order, err := p.Order()
	if err != nil {
		return line
	}
	var runs []string
	for i := range order.NumRuns() {
		run := order.Run(i)
		text := run.String()
		if run.Direction() == bidi.RightToLeft {
			text = reversed(text)
		}
		runs = append(runs, text)
	}
	if startsRightToLeft(line) {
		slices.Reverse(runs)
	}
	return strings.Join(runs, "")
}

// reversed returns s from its last character to its first, each with its marks
// behind it, brackets turned round.
func reversed(s string) string {
	var clusters []string
	for it := graphemes.FromString(s); it.Next(); {
		c := it.Value()
		if len(c) == 1 {
			c = bidi.ReverseString(c)
		}
		clusters = append(clusters, c)
	}
	slices.Reverse(clusters)
	return strings.Join(clusters, "")
}

// rightToLeft reports whether r is a letter of a script that runs so.
func rightToLeft(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.R || p.Class() == bidi.AL
}

// startsRightToLeft reports whether the first letter of s runs right to left.
func startsRightToLeft(s string) bool {
	for _, r := range s {
		if p, _ := bidi.LookupRune(r); p.Class() == bidi.L {
			return false
		}
		if rightToLeft(r) {
			return true
		}
	}
	return false
}

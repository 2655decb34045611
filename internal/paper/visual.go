package paper

import (
	"slices"
	"strings"
	"unicode/utf8"

	"coldfloor/internal/safetext"

	"golang.org/x/text/unicode/bidi"
)

// Visual returns a line in the order in which it is drawn from left to right.
// The library draws characters as they come, so that Hebrew would run the
// wrong way.
func Visual(line string) string {
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
	var rightward []bool // of each run, false for what is within Hebrew, figures too
	for i := range order.NumRuns() {
		run := order.Run(i)
		text := run.String()
		if run.Direction() == bidi.RightToLeft {
			text = reversed(text)
		}
		runs = append(runs, text)
		rightward = append(rightward, strings.ContainsFunc(run.String(), leftToRight))
	}
	if startsRightToLeft(line) {
		slices.Reverse(runs)
	} else {
		reverseWithin(runs, rightward)
	}
	return strings.Join(runs, "")
}

// reverseWithin reverses the order of neighbouring runs that belong to one
// passage of Hebrew.
func reverseWithin(runs []string, rightward []bool) {
	for i := 0; i < len(runs); {
		n := i
		for n < len(runs) && !rightward[n] {
			n++
		}
		slices.Reverse(runs[i:n])
		i = n + 1
	}
}

// reversed returns s from its last character to its first, each with its marks
// behind it, brackets turned round.
func reversed(s string) string {
	var clusters []string
	for c := range safetext.Characters(s) {
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

// leftToRight reports whether r is a letter of a script that runs so.
func leftToRight(r rune) bool {
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.L
}

// startsRightToLeft reports whether the first letter of s runs right to left.
func startsRightToLeft(s string) bool {
	i := strings.IndexFunc(s, func(r rune) bool { return leftToRight(r) || rightToLeft(r) })
	r, _ := utf8.DecodeRuneInString(s[max(i, 0):])
	return rightToLeft(r)
}

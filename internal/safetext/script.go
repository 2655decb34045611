package safetext

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/bidi"
)

// Isolates, each of no width (Unicode Standard Annex 9, explicit directional
// isolates).
const (
	firstStrong = '\u2068' // opens one whose direction is that of its text
	popIsolate  = '\u2069' // closes it
)

// Isolate returns a line, which may hold escape sequences, with each stretch of
// text that runs from right to left isolated, so that a terminal that reorders
// text leaves what stands beside it in its place: "12 sec" after an Arabic name.
// It is for the last step before the terminal, for Clean takes isolates away.
func Isolate(line string) string {
	if !strings.ContainsFunc(line, fromTheRight) {
		return line
	}
	var b strings.Builder
	rest := line
	for {
		from := strings.IndexFunc(rest, fromTheRight)
		if from < 0 {
			return b.String() + rest
		}
		to := endOfStretch(rest[from:]) + from
		b.WriteString(rest[:from])
		b.WriteRune(firstStrong)
		b.WriteString(rest[from:to])
		b.WriteRune(popIsolate)
		rest = rest[to:]
	}
}

// endOfStretch returns where the text from the right ends that s begins with:
// after the last letter of it, with signs and blanks between its words, before
// anything else.
func endOfStretch(s string) int {
	end := 0
	for i, r := range s {
		switch {
		case fromTheRight(r), end == i && isMark(r):
			end = i + len(string(r))
		case r == ' ', r > ' ' && unicode.IsPunct(r):
		default:
			return end
		}
	}
	return end
}

// fromTheRight reports whether r is a letter of a script that runs from right
// to left.
func fromTheRight(r rune) bool {
	if r < 0x590 {
		return false
	}
	p, _ := bidi.LookupRune(r)
	return p.Class() == bidi.R || p.Class() == bidi.AL
}

// Spaced returns s cleaned, with a space between its characters and three
// between its words, to be seen from further off. Scripts whose letters join
// are left as they are: they would fall apart.
func Spaced(s string) string {
	s = Clean(s)
	for _, r := range s {
		if unicode.In(r, unicode.Arabic, unicode.Syriac, unicode.Mongolian, unicode.Devanagari, unicode.Bengali, unicode.Gurmukhi,
			unicode.Gujarati, unicode.Oriya, unicode.Tamil, unicode.Telugu, unicode.Kannada, unicode.Malayalam, unicode.Sinhala,
			unicode.Thai, unicode.Lao, unicode.Khmer, unicode.Myanmar, unicode.Tibetan, unicode.Nko) {
			return s
		}
	}
	var b strings.Builder
	for c := range Characters(s) {
		if b.Len() > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(c)
	}
	return b.String()
}

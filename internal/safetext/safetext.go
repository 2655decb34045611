// Package safetext makes text that somebody else wrote (a session file, a
// settings file, a journal) safe to show in a terminal, and fits it into a
// given number of cells. Every function takes raw text and cleans it first,
// so that nothing reaches the screen by way of a forgotten call.
//
// Widths are those of github.com/charmbracelet/x/ansi, which the screen
// libraries measure with too: grapheme clusters by East Asian width.
package safetext

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/text/unicode/norm"
)

// maxMarks is how many combining marks one character may carry. Scripts in
// use need up to four or so; dozens spill over the lines around.
const maxMarks = 4

// Clean returns s as one line of valid UTF-8 that moves no cursor, starts no
// escape sequence and does not reorder what stands around it:
//
//   - line breaks, tabs and every kind of blank become a space;
//   - other control characters, ESC among them, broken bytes, private-use and
//     unassigned characters become U+FFFD, so that they are seen;
//   - bidirectional controls and characters that cannot be seen are dropped,
//     except for the joiners that Arabic and Indic spelling needs;
//   - emoji sequences fall apart into their signs, flags into their letters,
//     and skin tones go, because terminals do not agree on the width of the
//     whole.
//
// Clean(Clean(s)) equals Clean(s).
func Clean(s string) string {
	if printableASCII(s) {
		return s
	}
	for range passes {
		c := once(s)
		if c == s {
			break
		}
		s = c
	}
	return s
}

// passes bounds how often a text is cleaned: what was dropped may have stood
// between two parts of one character, which then take another order.
const passes = 8

// once cleans a text once.
func once(s string) string {
	var last rune
	seen := strings.Map(func(r rune) rune {
		if isJoiner(r) && !joins(last) {
			return -1
		}
		if r = visible(r); r >= 0 {
			last = r
		}
		return r
	}, strings.ToValidUTF8(s, "\uFFFD"))
	var b strings.Builder
	last = ' '
	for c := range Characters(norm.NFC.String(seen)) {
		last = writeCluster(&b, c, last)
	}
	return norm.NFC.String(b.String())
}

// printableASCII reports whether s holds nothing but printable ASCII.
func printableASCII(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// visible maps a character to what is shown of it, or below zero to drop it.
func visible(r rune) rune {
	switch {
	case isJoiner(r):
		return r
	case unicode.IsSpace(r) || unicode.Is(unicode.Zs, r):
		return ' '
	case r >= '\U0001F1E6' && r <= '\U0001F1FF': // halves of a flag
		return 'A' + r - '\U0001F1E6'
	case r >= '\U0001F3FB' && r <= '\U0001F3FF': // skin tones, which colour the sign before them
		return -1
	case unicode.In(r, unicode.Cf, unicode.Variation_Selector, unicode.Other_Default_Ignorable_Code_Point):
		return -1
	case !unicode.IsGraphic(r), unicode.Is(prepend, r):
		return unicode.ReplacementChar
	}
	return r
}

// prepend holds the visible characters that make one cluster with whatever
// follows them, be it the frame of the screen (Unicode Standard Annex 29,
// Grapheme_Cluster_Break=Prepend). All are rare signs of historical spelling.
var prepend = &unicode.RangeTable{
	R16: []unicode.Range16{{Lo: 0x0D4E, Hi: 0x0D4E, Stride: 1}},
	R32: []unicode.Range32{
		{Lo: 0x111C2, Hi: 0x111C3, Stride: 1}, {Lo: 0x113D1, Hi: 0x113D1, Stride: 1},
		{Lo: 0x1193F, Hi: 0x11941, Stride: 2}, {Lo: 0x11A3A, Hi: 0x11A3A, Stride: 1},
		{Lo: 0x11A84, Hi: 0x11A89, Stride: 1}, {Lo: 0x11D46, Hi: 0x11D46, Stride: 1},
		{Lo: 0x11F02, Hi: 0x11F02, Stride: 1},
	},
}

// The zero-width non-joiner and joiner, part of the spelling of some scripts.
const (
	zwnj = '\u200C'
	zwj  = '\u200D'
)

// circle carries a mark that has no letter to stand on, which would fall on
// whatever stands before the text.
const circle = '\u25CC'

// writeCluster writes what is shown of one grapheme cluster after the
// character last, and returns the character written last.
func writeCluster(b *strings.Builder, cluster string, last rune) rune {
	marks := 0
	write := func(r rune) {
		b.WriteRune(r)
		last = r
	}
	first, size := utf8.DecodeRuneInString(cluster)
	if isMark(first) && !carries(last) {
		write(circle)
		marks++
	}
	write(first)
	if first == ' ' && size < len(cluster) {
		write(circle)
	}
	for _, r := range cluster[size:] {
		switch {
		case isSymbol(first), !unicode.IsLetter(first) && !isMark(r):
			return last // a sequence of signs
		case isMark(r):
			if marks++; marks > maxMarks {
				continue
			}
		}
		write(r)
	}
	return last
}

func isJoiner(r rune) bool { return r == zwnj || r == zwj }

// joins reports whether a joiner after r can be part of a word's spelling.
func joins(r rune) bool {
	return (unicode.IsLetter(r) || unicode.IsMark(r)) && !unicode.In(r, unicode.Latin, unicode.Greek, unicode.Cyrillic, unicode.Inherited)
}

// isMark reports whether r joins the character before it: a mark, a joiner,
// or one of the few letters that Unicode Standard Annex 29 counts with them
// (the Thai and Lao sign for -am).
func isMark(r rune) bool {
	return unicode.IsMark(r) || unicode.Is(unicode.Other_Grapheme_Extend, r) || isJoiner(r) ||
		r == '\u0E33' || r == '\u0EB3'
}

// carries reports whether a mark may stand after r.
func carries(r rune) bool { return unicode.IsLetter(r) || isMark(r) || r == circle }

// isSymbol reports whether r is a pictograph rather than a letter, figure or
// sign that takes an accent.
func isSymbol(r rune) bool { return unicode.Is(unicode.So, r) && r != circle }

// Width returns how many cells s takes once cleaned.
func Width(s string) int { return ansi.StringWidth(Clean(s)) }

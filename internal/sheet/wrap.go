package sheet

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/clipperhouse/uax29/v2/graphemes"
)

// wrap breaks s into lines of at most width millimetres, the first of them
// shorter by indent: between words, else behind a hyphen or stroke, else
// between two characters. Empty text has no lines.
func (t *typeface) wrap(f face, s string, width, indent float64) []string {
	var lines []string
	line, free := "", width-indent
	space := t.width(f, " ")
	for _, piece := range pieces(t.printable(s)) {
		gap := 0.0
		if line != "" && piece.spaced {
			gap = space
		}
		w := t.width(f, piece.text)
		if w+gap > free && (line != "" || len(lines) == 0 && indent > 0) {
			lines = append(lines, line)
			line, free, gap = "", width, 0
		}
		for w > free {
			var head string
			head, piece.text = t.cut(f, piece.text, free)
			lines = append(lines, head)
			free, w = width, t.width(f, piece.text)
		}
		if gap > 0 {
			line += " "
		}
		line += piece.text
		free -= gap + w
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// piece is text that is not broken where that can be helped.
type piece struct {
	text   string
	spaced bool // a space stands before it
}

// pieces divides s into words, and those behind hyphens and strokes.
func pieces(s string) []piece {
	var out []piece
	for _, word := range strings.Fields(s) {
		spaced := true
		for i := 0; i < len(word); {
			n := breakAfter(word[i:])
			out = append(out, piece{word[i : i+n], spaced})
			i, spaced = i+n, false
		}
	}
	return out
}

// breakAfter returns the length of word up to and with its first hyphen or
// stroke that stands between letters, or its whole length.
func breakAfter(word string) int {
	before := ' '
	for i, r := range word {
		if r == '-' || r == '/' {
			after, _ := utf8.DecodeRuneInString(word[i+1:])
			if unicode.IsLetter(before) && unicode.IsLetter(after) {
				return i + 1
			}
		}
		before = r
	}
	return len(word)
}

// cut splits off as much of word as fits into width, at least one character.
func (t *typeface) cut(f face, word string, width float64) (head, rest string) {
	end, used := 0, 0.0
	for it := graphemes.FromString(word); it.Next(); end = it.End() {
		used += t.width(f, it.Value())
		if used > width && end > 0 {
			break
		}
	}
	return word[:end], word[end:]
}

// fit returns the largest size, of f down to floor points, at which s takes at
// most n lines of the width, and the lines. At the floor it takes as many as
// it needs.
func (t *typeface) fit(f face, floor float64, s string, width float64, n int) (face, []string) {
	for {
		lines := t.wrap(f, s, width, 0)
		if len(lines) <= n && t.whole(f, s, width) || f.size <= floor {
			return f, lines
		}
		f.size = max(f.size-0.5, floor)
	}
}

// whole reports whether every word of s fits on a line.
func (t *typeface) whole(f face, s string, width float64) bool {
	for _, word := range strings.Fields(t.printable(s)) {
		if t.width(f, word) > width {
			return false
		}
	}
	return true
}

// clip returns s, or as much of it as fits into the width with an ellipsis.
func (t *typeface) clip(f face, s string, width float64) string {
	s = t.printable(s)
	if t.width(f, s) <= width {
		return s
	}
	head, _ := t.cut(f, s, width-t.width(f, "…"))
	return strings.TrimRight(head, " ") + "…"
}

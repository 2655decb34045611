package paper

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"coldfloor/internal/safetext"
)

// NoBreak is a space at which no line is broken.
const NoBreak = '\u00a0'

// Wrap breaks s into lines of at most width millimetres: between words, else
// behind a hyphen or stroke, else between two characters. Empty text has no
// lines.
func (t *Typeface) Wrap(f Face, s string, width float64) []Line {
	return t.Flow([]Run{{f, s}}, width, 0)
}

// Flow is Wrap for one text in several faces. The lines after the first are
// indented by hang.
func (t *Typeface) Flow(text []Run, width, hang float64) []Line {
	w := wrapper{types: t, width: width, hang: hang, free: width}
	for _, r := range text {
		for _, p := range pieces(t.Printable(r.Text)) {
			w.add(r.Face, p)
		}
	}
	return w.end()
}

// wrapper fills lines; free is the room left on the one being filled.
type wrapper struct {
	types             *Typeface
	width, hang, free float64
	lines             []Line
	runs              []Run
}

// add puts a piece behind the text so far.
func (w *wrapper) add(f Face, p piece) {
	gap := ""
	if len(w.runs) > 0 && p.spaced {
		gap = " "
	}
	if len(w.runs) > 0 && w.types.Width(f, gap+p.text) > w.free {
		w.next()
		gap = ""
	}
	for w.types.Width(f, p.text) > w.free {
		var head string
		head, p.text = w.types.cut(f, p.text, w.free)
		w.put(f, head)
		w.next()
	}
	w.put(f, gap+p.text)
}

// put appends text to the line.
func (w *wrapper) put(f Face, text string) {
	w.free -= w.types.Width(f, text)
	if n := len(w.runs); n > 0 && w.runs[n-1].Face == f {
		w.runs[n-1].Text += text
		return
	}
	w.runs = append(w.runs, Run{f, text})
}

// next ends the line.
func (w *wrapper) next() {
	indent := w.hang
	if len(w.lines) == 0 {
		indent = 0
	}
	w.lines = append(w.lines, Line{Runs: w.runs, Indent: indent})
	w.runs, w.free = nil, w.width-w.hang
}

// end returns the lines.
func (w *wrapper) end() []Line {
	if len(w.runs) > 0 {
		w.next()
	}
	return w.lines
}

// piece is text that is not broken if that can be helped.
type piece struct {
	text   string
	spaced bool // a space stands before it
}

// pieces divides s into words, and those behind hyphens and strokes.
func pieces(s string) []piece {
	var out []piece
	for _, word := range spacedApart(s) {
		spaced := true
		for i := 0; i < len(word); {
			n := breakAfter(word[i:])
			out = append(out, piece{word[i : i+n], spaced})
			i, spaced = i+n, false
		}
	}
	return out
}

// spacedApart divides s at its spaces, but for those that no line breaks at.
func spacedApart(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool { return unicode.IsSpace(r) && r != NoBreak })
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
func (t *Typeface) cut(f Face, word string, width float64) (head, rest string) {
	end, used := 0, 0.0
	for c := range safetext.Characters(word) {
		used += t.Width(f, c)
		if used > width && end > 0 {
			break
		}
		end += len(c)
	}
	return word[:end], word[end:]
}

// Fit returns the largest size, of f down to floor points, at which s takes at
// most n lines of the width, and the lines. At the floor it takes as many as
// it needs.
func (t *Typeface) Fit(f Face, floor float64, s string, width float64, n int) (Face, []Line) {
	for {
		lines := t.Wrap(f, s, width)
		if len(lines) <= n && t.Whole(f, s, width) || f.Size <= floor {
			return f, lines
		}
		f.Size = max(f.Size-0.5, floor)
	}
}

// Whole reports whether every word of s fits on a line.
func (t *Typeface) Whole(f Face, s string, width float64) bool {
	for _, word := range spacedApart(t.Printable(s)) {
		if t.Width(f, word) > width {
			return false
		}
	}
	return true
}

// Clip returns s, or as much of it as fits into the width with an ellipsis.
func (t *Typeface) Clip(f Face, s string, width float64) string {
	s = t.Printable(s)
	if t.Width(f, s) <= width {
		return s
	}
	head, _ := t.cut(f, s, width-t.Width(f, "…"))
	return strings.TrimRight(head, " ") + "…"
}

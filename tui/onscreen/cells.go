package onscreen

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// cell is one cell of the screen. The zero cell is one that may hold anything.
type cell struct {
	text  string // one character with its marks; empty in the second half of a wide one
	style string // the sequences that make its look, since the last reset; empty: the terminal's own
}

// row is one line of the screen.
type row struct {
	source string // what it was read from
	cells  []cell
	whole  bool // it holds characters that are not one cell each, and is written whole or not at all
}

// blank is a cell with nothing in it.
var blank = cell{text: " "}

// rowOf reads a line of a picture: text and SGR sequences (ECMA-48, 8.3.117).
// It is cut to width cells, and what it does not reach is blank. A style does
// not go on in the next line.
func rowOf(line string, width int) row {
	w := rowWriter{row: row{source: line, cells: make([]cell, 0, width)}, width: width}
	var state byte
	for len(line) > 0 {
		if c := line[0]; c >= 0x20 && c < 0x7f && (len(line) == 1 || line[1] < 0x80) { // nothing joins it
			w.put(line[:1], 1)
			line = line[1:]
			continue
		}
		seq, wide, n, next := ansi.DecodeSequence(line, state, nil)
		state, line = next, line[n:]
		w.sequence(seq, wide)
	}
	for len(w.cells) < width {
		w.cells = append(w.cells, blank)
	}
	return w.row
}

// rowWriter is a row that is being read.
type rowWriter struct {
	row
	width  int
	style  string // in force
	seen   bool   // the style is seen on a blank too
	before string // what belongs to the next cell
}

// put writes a text of so many cells.
func (w *rowWriter) put(text string, wide int) {
	if len(w.cells)+wide > w.width {
		return
	}
	if text == " " && w.before == "" && !w.seen {
		w.cells = append(w.cells, blank)
		return
	}
	w.cells = append(w.cells, cell{w.before + text, w.style})
	w.before = ""
	for range wide - 1 {
		w.cells = append(w.cells, cell{"", w.style})
	}
}

// sequence takes what the line has next: a character of so many cells, or what
// has none.
func (w *rowWriter) sequence(seq string, wide int) {
	switch {
	case wide > 0:
		w.whole = w.whole || wide > 1
		w.put(seq, wide)
	case seq[0] == '\x1b':
		w.style = styled(w.style, seq)
		w.seen = seenOnBlank(w.style)
	case seq[0] < 0x20 || seq[0] == 0x7f: // moves the cursor: never in a picture
	case len(w.cells) == 0, seq == opensIsolate:
		w.before += seq
		w.whole = true
	default:
		w.cells[len(w.cells)-1].text += seq
		w.whole = true
	}
}

// opensIsolate stands before the text that it isolates, and so belongs to the
// cell after it (Unicode Standard Annex 9, FSI).
const opensIsolate = "\u2068"

// styled returns a style with one more sequence. Only those that set a look are
// kept.
func styled(style, seq string) string {
	switch {
	case seq == "\x1b[m" || seq == "\x1b[0m":
		return ""
	case strings.HasPrefix(seq, "\x1b[") && strings.HasSuffix(seq, "m"):
		return style + seq
	}
	return style
}

// seenOnBlank reports whether a style shows where there is no character: a
// background, a line, or the two colours exchanged (ECMA-48, 8.3.117; the rest
// of the 256 and 16 million colours as in ISO 8613-6).
func seenOnBlank(style string) bool {
	params := strings.FieldsFunc(style, func(r rune) bool { return r == '\x1b' || r == '[' || r == 'm' || r == ';' })
	for i := 0; i < len(params); i++ {
		switch p := params[i]; {
		case p == "38" && i+1 < len(params) && params[i+1] == "5":
			i += 2
		case p == "38":
			i += 4
		case p == "4", p == "7", p == "9", p == "21", p == "53", strings.HasPrefix(p, "4") && len(p) == 2, strings.HasPrefix(p, "10") && len(p) == 3:
			return true
		}
	}
	return false
}

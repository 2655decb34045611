package onscreen

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// cell is one cell of the screen. The zero cell is one that may hold anything.
// Cells that are seen alike are equal.
type cell struct {
	text string // one character with its marks; empty in the second half of a wide one
	look lookID
}

// row is one line of the screen.
type row struct {
	source string // what it was read from
	cells  []cell
	whole  bool // it holds characters that are not one cell each, and is written whole or not at all
}

// blank is a cell with nothing in it.
var blank = cell{text: " "}

// full is the character that fills its cell.
const full = "█"

// reader reads lines of a picture: text and SGR sequences.
type reader struct {
	*looks
	width int
	able  bool // the terminal is; then a full cell is the same as a blank on a ground of its colour
}

// row reads a line into cells, which may be reused. It is cut to the width, and
// what it does not reach is blank. A look does not go on in the next line.
func (r reader) row(line string, cells []cell) row {
	w := rowWriter{row: row{source: line, cells: cells[:0]}, reader: r}
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
	for len(w.cells) < r.width {
		w.cells = append(w.cells, blank)
	}
	return w.row
}

// rowWriter is a row that is being read.
type rowWriter struct {
	row
	reader
	look         lookID // in force
	before       string // what belongs to the next cell
	last, stands cell   // the last cell, as it was read and what stands for it
}

// put writes a text of so many cells.
func (w *rowWriter) put(text string, wide int) {
	if len(w.cells)+wide > w.width {
		return
	}
	if c := (cell{w.before + text, w.look}); c != w.last || len(w.cells) == 0 {
		w.last, w.stands = c, w.seen(c)
	}
	w.cells = append(w.cells, w.stands)
	w.before = ""
	for range wide - 1 {
		w.cells = append(w.cells, cell{"", w.shown(w.look)})
	}
}

// seen returns the cell that stands for all that are seen alike. A full one
// stays what it is where the ink is not sure to be the ground's colour: the
// terminal's own ink, and letters that are brighter for being bold.
func (r reader) seen(c cell) cell {
	c.look = r.shown(c.look)
	if c.look == 0 || c.text != " " && c.text != full {
		return c
	}
	switch l := r.all[c.look]; {
	case c.text == " " && l.attrs&seenOnBlank == 0:
		c.look = r.id(look{bg: l.bg})
	case c.text == full && r.able && l.fg != "" && l.attrs == 0:
		c = cell{" ", r.id(look{bg: asGround(l.fg)})}
	}
	return c
}

// sequence takes what the line has next: a character of so many cells, or what
// has none.
func (w *rowWriter) sequence(seq string, wide int) {
	switch {
	case wide > 0:
		w.whole = w.whole || wide > 1
		w.put(seq, wide)
	case strings.HasPrefix(seq, "\x1b[") && strings.HasSuffix(seq, "m"):
		w.look = w.after(w.look, seq)
	case seq[0] == '\x1b': // sets no look
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

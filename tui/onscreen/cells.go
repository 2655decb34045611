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
	r := row{source: line, cells: make([]cell, 0, width)}
	style, before := "", ""
	seen := false // the style is seen on a blank too
	put := func(text string, wide int) {
		if len(r.cells)+wide > width {
			return
		}
		if text == " " && before == "" && !seen {
			r.cells = append(r.cells, blank)
			return
		}
		r.cells = append(r.cells, cell{before + text, style})
		before = ""
		for range wide - 1 {
			r.cells = append(r.cells, cell{"", style})
		}
	}
	var state byte
	for len(line) > 0 {
		if c := line[0]; c >= 0x20 && c < 0x7f && (len(line) == 1 || line[1] < 0x80) { // nothing joins it
			put(line[:1], 1)
			line = line[1:]
			continue
		}
		seq, wide, n, next := ansi.DecodeSequence(line, state, nil)
		state, line = next, line[n:]
		switch {
		case wide > 0:
			r.whole = r.whole || wide > 1
			put(seq, wide)
		case seq[0] == '\x1b':
			style = styled(style, seq)
			seen = seenOnBlank(style)
		case seq[0] < 0x20 || seq[0] == 0x7f: // moves the cursor: never in a picture
		case len(r.cells) == 0, seq == opensIsolate:
			before += seq
			r.whole = true
		default:
			r.cells[len(r.cells)-1].text += seq
			r.whole = true
		}
	}
	for len(r.cells) < width {
		r.cells = append(r.cells, blank)
	}
	return r
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

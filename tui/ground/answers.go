package ground

import (
	"bytes"
	"strconv"

	"github.com/charmbracelet/x/ansi"
)

// What the answers begin with: OSC 11, which BEL or ST ends, and the report of the
// cursor in row 2, which R ends after its column ("XTerm Control Sequences", under
// Operating System Commands and Device Status Report).
const (
	ofColour = "\x1b]11;"
	ofCursor = "\x1b[2;"
)

// longest is more bytes than any answer has.
const longest = 64

// take cuts the answers, or the beginning of one, out of b and returns how many
// bytes are left.
func (t *Terminal) take(b []byte) int {
	kept := 0
	for i := 0; i < len(b); {
		n, more := 0, false
		if b[i] == '\x1b' && t.awaits() {
			n, more = t.answer(b[i:])
		}
		switch {
		case more:
			t.held = bytes.Clone(b[i:])
			return kept
		case n > 0:
			i += n
		default:
			b[kept] = b[i]
			kept, i = kept+1, i+1
		}
	}
	return kept
}

// answer takes the answer that b begins with, and returns how long it is; 0 where
// there is none. More tells that there may be one, but not yet whole.
func (t *Terminal) answer(b []byte) (n int, more bool) {
	if t.colour {
		if n, more = t.colourOf(b); n > 0 || more {
			return n, more
		}
	}
	if t.reports > 0 {
		return t.columnOf(b)
	}
	return 0, false
}

// colourOf is answer for the background's colour.
func (t *Terminal) colourOf(b []byte) (n int, more bool) {
	text, begun, more := after(b, ofColour)
	if !begun {
		return 0, more
	}
	end := bytes.IndexAny(text, "\a\x1b")
	switch {
	case len(text) > longest && (end < 0 || end > longest):
		t.colour = false // whatever it is, it is no answer
		return 0, false
	case end < 0, text[end] == '\x1b' && end+1 == len(text):
		return 0, true
	}
	t.colour = false
	if c := ansi.XParseColor(string(text[:end])); c != nil {
		t.dark <- isDark(c)
	}
	if text[end] == '\x1b' {
		end++
	}
	return len(ofColour) + end + 1, false
}

// columnOf is answer for where the cursor stands.
func (t *Terminal) columnOf(b []byte) (n int, more bool) {
	text, begun, more := after(b, ofCursor)
	if !begun {
		return 0, more
	}
	digits := 0
	for digits < len(text) && digits < 4 && '0' <= text[digits] && text[digits] <= '9' {
		digits++
	}
	switch {
	case digits == len(text):
		return 0, true
	case digits == 0 || text[digits] != 'R':
		return 0, false
	}
	t.reports--
	column, _ := strconv.Atoi(string(text[:digits])) // four digits at most
	t.column <- column
	return len(ofCursor) + digits + 1, false
}

// after returns what follows the introducer that b begins with. If b may be the
// beginning of it, there is more to come. The first two bytes alone may be a key,
// and are not held up.
func after(b []byte, introducer string) (text []byte, begun, more bool) {
	if text, begun = bytes.CutPrefix(b, []byte(introducer)); begun {
		return text, true, false
	}
	return nil, false, len(b) > 2 && bytes.HasPrefix([]byte(introducer), b)
}

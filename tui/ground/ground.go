// Package ground finds out whether a terminal's background is dark or light.
// The terminal is asked while the screen is already shown, so that one that
// answers late or never holds nothing up, and its answer is never taken for
// keys.
package ground

import (
	"bytes"
	"image/color"
	"io"
	"os"
	"runtime"
	"strconv"
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/term"
	"github.com/muesli/termenv"
)

// Bubble Tea asks the terminal as it is initialised, whatever the command, and
// waits for an answer up to five seconds, unless the background is known by
// then. This comes before: packages are initialised in the order of their
// import paths as far as their imports allow (The Go Programming Language
// Specification, "Program initialization"), and all that is imported here
// Bubble Tea imports too.
func init() { lipgloss.SetHasDarkBackground(assumed(os.Getenv("COLORFGBG"))) }

// assumed reports whether the background is taken to be dark until the
// terminal has answered. Colours is what some terminals tell in COLORFGBG: the
// numbers of their colours, the background's last.
func assumed(colours string) (dark bool) {
	n, err := strconv.Atoi(colours[strings.LastIndex(colours, ";")+1:])
	return err != nil || n < 0 || n > 15 || isDark(termenv.ConvertToRGB(termenv.ANSIColor(n)))
}

// isDark reports whether a colour's lightness is less than half, as in HSL.
func isDark(c color.Color) bool {
	r, g, b, _ := c.RGBA()
	return max(r, g, b)+min(r, g, b) < 0xffff
}

// introducer begins the answer, which BEL or ST ends: OSC 11 of xterm ("XTerm
// Control Sequences", under Operating System Commands).
const introducer = "\x1b]11;"

// longest is more than any answer is long, in bytes.
const longest = 64

// Terminal is a terminal's input without the answer in it.
type Terminal struct {
	*os.File
	held    []byte // the beginning of an answer
	settled bool   // nothing more is awaited
	dark    chan bool
}

// Of returns the terminal of which f is the input, or nil where it cannot be
// asked, or need not be.
func Of(f *os.File) *Terminal {
	if settled {
		return nil
	}
	if runtime.GOOS == "windows" || !term.IsTerminal(f.Fd()) { // there keys come as events, not as bytes
		return nil
	}
	return &Terminal{File: f, dark: make(chan bool, 1)}
}

// Ask asks by out, the terminal's output, and tells look the answer. It
// returns when there is one, which may be never. It is to be called once, in
// raw mode, with Read going on.
func (t *Terminal) Ask(out io.Writer, look *lipgloss.Renderer) {
	if _, err := io.WriteString(out, ansi.RequestBackgroundColor); err == nil {
		look.SetHasDarkBackground(<-t.dark)
	}
}

// Read implements io.Reader. It may return no bytes and no error.
func (t *Terminal) Read(p []byte) (int, error) {
	if t.settled {
		return t.File.Read(p)
	}
	held := copy(p, t.held)
	t.held = t.held[held:]
	if held == len(p) {
		return held, nil
	}
	n, err := t.File.Read(p[held:])
	return t.take(p[:held+max(0, n)]), err
}

// take cuts the answer, or the beginning of it, out of b and returns how many
// bytes are left.
func (t *Terminal) take(b []byte) int {
	from := bytes.Index(b, []byte(introducer))
	if from < 0 {
		return t.hold(b, len(b)-begun(b))
	}
	text := b[from+len(introducer):]
	end := bytes.IndexAny(text, "\a\x1b")
	switch {
	case len(text) > longest && (end < 0 || end > longest):
		t.settled = true // whatever it is, it is no answer
		return len(b)
	case end < 0, text[end] == '\x1b' && end+1 == len(text):
		return t.hold(b, from)
	}
	t.settled = true
	if c := ansi.XParseColor(string(text[:end])); c != nil {
		t.dark <- isDark(c)
	}
	if text[end] == '\x1b' {
		end++
	}
	return from + copy(b[from:], text[end+1:])
}

// hold keeps back what follows the first n bytes of b, and returns n.
func (t *Terminal) hold(b []byte, n int) int {
	t.held = bytes.Clone(b[n:])
	return n
}

// begun returns how many bytes at the end of b may begin an answer. The first
// two alone may be a key, and are not held up.
func begun(b []byte) int {
	for n := len(introducer) - 1; n > 2; n-- {
		if bytes.HasSuffix(b, []byte(introducer[:n])) {
			return n
		}
	}
	return 0
}

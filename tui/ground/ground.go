// Package ground finds out whether a terminal's background is dark or light, and
// whether it repeats characters. The terminal is asked while the screen is already
// shown, so that one that answers late or never holds nothing up, and its answers
// are never taken for keys.
package ground

import (
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

// Terminal is a terminal's input without the answers in it.
type Terminal struct {
	*os.File
	held    []byte    // the beginning of an answer
	colour  bool      // the answer about the background is awaited
	reports int       // how many reports of where the cursor stands are awaited
	dark    chan bool // the answers
	column  chan int
}

// Of returns the terminal of which f is the input, or nil where it cannot be
// asked.
func Of(f *os.File) *Terminal {
	if runtime.GOOS == "windows" || !term.IsTerminal(f.Fd()) { // there keys come as events, not as bytes
		return nil
	}
	return of(f, !settled)
}

// of returns the terminal that f is the input of. Colour is whether its background
// is asked for.
func of(f *os.File, colour bool) *Terminal {
	return &Terminal{File: f, colour: colour, reports: 2, dark: make(chan bool, 1), column: make(chan int, 2)}
}

// Ask asks for the background through out, the terminal's output, and tells look
// the answer. It returns when there is one, which may be never, or at once where
// somebody has said what the background is. It is to be called once, in raw mode,
// with Read going on.
func (t *Terminal) Ask(out io.Writer, look *lipgloss.Renderer) {
	if settled {
		return
	}
	if _, err := io.WriteString(out, ansi.RequestBackgroundColor); err == nil {
		look.SetHasDarkBackground(<-t.dark)
	}
}

// RequestRepeats has the terminal repeat two characters, each twice (REP of
// ECMA-48), and asks each time where its cursor stands then. It leaves blanks at
// the beginning of row 2, which there must be: a report of row 1 can be a key. The
// second character has more than a byte, which some terminals never repeat.
const RequestRepeats = "\x1b[2H \x1b[2b\x1b[6n\r\u00a0\x1b[2b\x1b[6n"

// Repeats returns which characters the terminal repeats, ASCII and any others, once
// RequestRepeats has been answered, which may be never. It is to be called once.
func (t *Terminal) Repeats() (ascii, others bool) {
	const after = 4 // three characters
	ascii = <-t.column == after
	return ascii, <-t.column == after
}

// Read implements io.Reader. It may return no bytes and no error.
func (t *Terminal) Read(p []byte) (int, error) {
	held := copy(p, t.held)
	t.held = t.held[held:]
	if held == len(p) {
		return held, nil
	}
	if held > 0 && !t.awaits() {
		return held, nil
	}
	n, err := t.File.Read(p[held:])
	return t.take(p[:held+max(0, n)]), err
}

// awaits reports whether an answer is awaited.
func (t *Terminal) awaits() bool { return t.colour || t.reports > 0 }

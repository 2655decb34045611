package onscreen

import (
	"fmt"
	"io"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"pgregory.net/rapid"

	"coldfloor/internal/termshot"
)

// TestPaintedCellByCell holds what a terminal emulator shows after changes
// against what another one shows of the whole picture, cell by cell.
func TestPaintedCellByCell(t *testing.T) {
	piece := rapid.OneOf(
		rapid.SampledFrom([]string{" ", "  ", "    ", strings.Repeat(" ", 14), "██████████", "▄▄▄▄▄", "ééé", "e\u0301e\u0301e\u0301e\u0301", "xxxxxxxx", "█", "▟▙", "▀▄", "0:42", "rest", "é", "\x1b[1m", "\x1b[38;5;214m", "\x1b[30;103m",
			"\x1b[0m", "\x1b[m", "\x1b[7m", "跳", "e\u0301", "Push-up"}),
		rapid.StringMatching(`[a-z ]{0,12}`))
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 30).Draw(t, "width"), rapid.IntRange(1, 8).Draw(t, "height")
		screen := vt.NewEmulator(w, h)
		p := newPainter(termshot.Repeating(screen), kind{able: rapid.Bool().Draw(t, "able")})
		p.reps = rapid.SampledFrom([]repeats{{}, {ascii: true}, {ascii: true, others: true}}).Draw(t, "repeats")
		p.resized(w, h)
		lines := make([]string, h)
		for range rapid.IntRange(1, 6).Draw(t, "pictures") {
			for y := range lines {
				if rapid.Bool().Draw(t, "changed") {
					line := strings.Join(rapid.SliceOfN(piece, 0, 10).Draw(t, "line"), "")
					lines[y] = ansi.Truncate(line, w, "") + "\x1b[m"
				}
			}
			p.draw(strings.Join(lines, "\n"))
			whole := vt.NewEmulator(w, h)
			for y, l := range lines {
				_, _ = io.WriteString(whole, ansi.CursorPosition(1, y+1)+l+"\x1b[m")
			}
			alike(t, screen, whole)
			if rapid.IntRange(0, 4).Draw(t, "stopped") == 0 { // another program wrote over it
				_, _ = io.WriteString(screen, ansi.CursorPosition(1, 1)+"$ ls")
				p.forget()
				p.draw(strings.Join(lines, "\n"))
				alike(t, screen, whole)
			}
		}
	})
}

// alike fails where two screens differ.
func alike(t *rapid.T, got, want *vt.Emulator) {
	t.Helper()
	for y := range want.Height() {
		for x := range want.Width() {
			if a, b := seen(got, x, y), seen(want, x, y); a != b {
				t.Fatalf("cell %d, %d is %s, want %s; the screen shows\n%s", x, y, a, b, got.String())
			}
		}
	}
}

// seen tells what is to be seen of a cell: of a blank, and of one that is full,
// the colour alone.
func seen(screen *vt.Emulator, x, y int) string {
	const reverse = 1 << 5 // a bit of its attributes
	c := screen.CellAt(x, y)
	s := c.Style
	switch {
	case c.Content == " " && s.Attrs&reverse == 0:
		return fmt.Sprint("all ", s.Bg)
	case c.Content == " " && s.Attrs == reverse && s.Fg != nil, c.Content == "█" && s.Attrs == 0 && s.Fg != nil:
		return fmt.Sprint("all ", s.Fg)
	}
	return fmt.Sprint(c.Content, c.Width, s.String())
}

// TestPaintsNothingTwice: a picture that is the same sends nothing, and one in
// which a figure changed little more than that figure.
func TestPaintsNothingTwice(t *testing.T) {
	var out strings.Builder
	p := newPainter(&out, kind{})
	p.resized(80, 2)
	p.draw("\x1b[1mrest\x1b[m    0:42\nnext: push-up")
	out.Reset()
	p.draw("\x1b[1mrest\x1b[m    0:42\nnext: push-up")
	if out.Len() > 0 {
		t.Errorf("the same picture sends %q", out.String())
	}
	p.draw("\x1b[1mrest\x1b[m    0:41\nnext: push-up")
	if got := out.String(); got != "\x1b[1;12H1" {
		t.Errorf("another second sends %q", got)
	}
}

//go:build e2e && linux

package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/charmbracelet/x/vt"

	"coldfloor/internal/tmuxtest"
)

// TestPaintedInTmux walks through the phases in a real terminal, where each
// picture is drawn by the cells that changed, halts the clock in each, and has
// the same picture drawn again: what tmux then holds, colours included, is what
// it held before.
func TestPaintedInTmux(t *testing.T) {
	for _, c := range []struct {
		term       string
		cols, rows int
	}{{"tmux-256color", 80, 24}, {"screen", 120, 40}} {
		t.Run(fmt.Sprintf("%s %dx%d", c.term, c.cols, c.rows), func(t *testing.T) {
			h := newHome(t, strings.ReplaceAll(staged, "Low hops", "Öne-leg höps 90° (½)"))
			x := tmuxtest.Start(t, c.cols, c.rows, h.env("TERM="+c.term, "TMUX=as in one"), "cd \"$HOME\" && exec "+binary()+" run --mute --background dark session.yaml")
			x.WaitFor("Before the first session")
			x.Keys("Enter")
			x.WaitFor("Before you start")
			x.Keys("Enter")
			x.WaitFor("Round 1 of 2")
			for _, keys := range [][]string{{}, {"Right"}, {"Right"}, {"Right"}, {"Right"}, {"Right", "Right"}, {"Right"}} {
				x.Until("the end of a pause", func(screen string) bool { return !strings.Contains(screen, "p to resume") })
				x.Keys(keys...)
				x.Keys("p")
				x.WaitFor("p to resume")
				seen := func() string { return looks(x.Coloured(), c.cols, c.rows) }
				drawn := seen()
				x.Resize(c.cols-20, c.rows-5)
				x.Until("the smaller picture", func(screen string) bool { return seen() != drawn })
				x.Resize(c.cols, c.rows)
				x.WaitFor("p to resume")
				x.Until("the picture as it was", func(string) bool { return seen() == drawn })
				x.Keys("p")
			}
		})
	}
}

// looks tells each cell of a captured screen: its text, its colours and whether
// it is bold, of a blank and of a full one the one colour that is seen.
func looks(captured string, cols, rows int) string {
	const reverse = 1 << 5 // a bit of its attributes
	e := vt.NewEmulator(cols, rows)
	_, _ = e.WriteString(strings.ReplaceAll(strings.TrimSuffix(captured, "\n"), "\n", "\r\n"))
	var b strings.Builder
	for y := range rows {
		for x := range cols {
			c := e.CellAt(x, y)
			s, empty := c.Style, strings.TrimSpace(c.Content) == ""
			switch {
			case empty && s.Attrs == reverse, c.Content == "█" && s.Attrs == 0:
				fmt.Fprintln(&b, x, y, s.Fg)
			case empty:
				fmt.Fprintln(&b, x, y, s.Bg)
			default:
				fmt.Fprintln(&b, x, y, c.Content, s.Fg, s.Bg, s.Attrs)
			}
		}
	}
	return b.String()
}

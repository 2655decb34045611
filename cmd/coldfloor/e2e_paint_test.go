//go:build e2e && linux

package main

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"testing"

	"github.com/charmbracelet/x/vt"
	"github.com/creack/pty"

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
			shown := attach(t, x, c.cols, c.rows)
			seen := func() string { return shown.looks() }
			x.WaitFor("Before the first session")
			x.Keys("Enter")
			x.WaitFor("Before you start")
			x.Keys("Enter")
			x.WaitFor("Round 1 of 2")
			for _, keys := range [][]string{{}, {"Right"}, {"Right"}, {"Right"}, {"Right"}, {"Right", "Right"}, {"Right"}} {
				x.Until("the end of a pause", func(screen string) bool { return !strings.Contains(screen, "p resume") })
				x.Keys(keys...)
				x.Keys("p")
				x.WaitFor("p resume")
				var drawn string
				x.Until("the picture in what shows it", func(screen string) bool {
					before := drawn
					drawn = seen()
					return drawn == before && strings.Contains(shown.text(), "p resume")
				})
				x.Resize(c.cols-20, c.rows-5)
				x.Until("the smaller picture", func(screen string) bool { return seen() != drawn })
				x.Resize(c.cols, c.rows)
				x.WaitFor("p resume")
				x.Until("the picture as it was", func(string) bool { return seen() == drawn })
				x.Keys("p")
			}
		})
	}
}

// client is an emulator that shows what tmux shows.
type client struct {
	mu     sync.Mutex
	screen *vt.Emulator
}

// attach shows a terminal in an emulator. What tmux captures leaves out cells
// that were erased in a colour.
func attach(t *testing.T, x *tmuxtest.Terminal, cols, rows int) *client {
	t.Helper()
	c := x.Attach()
	tty, err := pty.StartWithSize(c, &pty.Winsize{Cols: uint16(cols), Rows: uint16(rows)})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Process.Kill(); _ = c.Wait(); tty.Close() })
	shown := &client{screen: vt.NewEmulator(cols, rows)}
	go func() { _, _ = io.Copy(io.Discard, shown.screen) }() // its answers
	go func() { _, _ = io.Copy(shown, tty) }()
	return shown
}

// Write implements io.Writer.
func (c *client) Write(b []byte) (int, error) {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.screen.Write(b)
}

func (c *client) text() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.screen.String()
}

// looks tells each cell: its text, its colours and whether it is bold, of a
// blank and of a full one the one colour that is seen.
func (c *client) looks() string {
	c.mu.Lock()
	defer c.mu.Unlock()
	const reverse = 1 << 5 // a bit of its attributes
	var b strings.Builder
	for y := range c.screen.Height() {
		for x := range c.screen.Width() {
			cell := c.screen.CellAt(x, y)
			s, empty := cell.Style, strings.TrimSpace(cell.Content) == ""
			switch {
			case empty && s.Attrs == reverse, cell.Content == "█" && s.Attrs == 0:
				fmt.Fprintln(&b, x, y, s.Fg)
			case empty:
				fmt.Fprintln(&b, x, y, s.Bg)
			default:
				fmt.Fprintln(&b, x, y, cell.Content, s.Fg, s.Bg, s.Attrs)
			}
		}
	}
	return b.String()
}

package onscreen

import (
	"strconv"
	"strings"
	"testing"
)

// vtLook is what the Linux console writes in: what csi_m of drivers/tty/vt/vt.c
// makes of SGR, as far as the screens use it.
type vtLook struct {
	fg, bg       int
	bold, invert bool
}

// sgr takes one parameter.
func (c *vtLook) sgr(n int) {
	switch {
	case n == 0:
		*c = vtLook{fg: 7}
	case n == 1, n == 22:
		c.bold = n == 1
	case n == 7, n == 27:
		c.invert = n == 7
	case n == 39:
		c.fg = 7
	case n == 49:
		c.bg = 0
	case n >= 90 && n < 98:
		c.bold = true // and nothing but 0 and 22 ends it
		c.fg = n - 90
	case n >= 100 && n < 108:
		c.bg = n - 100
	case n >= 30 && n < 38:
		c.fg = n - 30
	case n >= 40 && n < 48:
		c.bg = n - 40
	}
}

// seen returns the colours that a character is written in, as build_attr makes
// them: ink and ground.
func (c *vtLook) seen() [2]int {
	ink, ground := c.fg, c.bg
	if c.invert {
		ink, ground = ground, ink
	}
	if c.bold {
		ink += 8
	}
	return [2]int{ink, ground}
}

// onVT returns the colours of each letter that is written.
func onVT(t *testing.T, written string) map[rune][2]int {
	t.Helper()
	c, seen := vtLook{fg: 7}, map[rune][2]int{}
	for written != "" {
		if seq, ok := strings.CutPrefix(written, "\x1b["); ok {
			end := strings.IndexFunc(seq, func(r rune) bool { return r >= '@' })
			if seq[end] == 'm' {
				for _, n := range strings.Split(seq[:end], ";") {
					v, _ := strconv.Atoi(n)
					c.sgr(v)
				}
			}
			written = seq[end+1:]
			continue
		}
		seen[rune(written[0])] = c.seen()
		written = written[1:]
	}
	return seen
}

// TestColoursOfTheLinuxConsole: a bright colour does not brighten what is written
// after it, and what is reversed and bold can be read.
func TestColoursOfTheLinuxConsole(t *testing.T) {
	var out strings.Builder
	p := newPainter(&out, kind{console: true})
	p.resized(12, 1)
	p.draw("\x1b[96mr\x1b[0m\x1b[37mg\x1b[0m\x1b[93my\x1b[0m\x1b[30;103mf\x1b[0m\x1b[1mb\x1b[0m\x1b[1;95mm\x1b[0m\x1b[95mn\x1b[0m\x1b[1;7mi\x1b[0mp")
	for r, want := range map[rune][2]int{
		'r': {14, 0}, 'g': {7, 0}, 'y': {11, 0}, 'f': {0, 3}, 'b': {15, 0}, 'm': {13, 0}, 'n': {13, 0}, 'i': {0, 7}, 'p': {7, 0},
	} {
		if got := onVT(t, out.String())[r]; got != want {
			t.Errorf("%c is written in %v, want %v: %q", r, got, want, out.String())
		}
	}
}

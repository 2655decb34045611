package tui

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
)

// inSight returns room lines of those given, from the line top on. What is out
// of sight above or below is counted in a line of its own, which takes the place
// of the first or the last one, where there is room for such a line. Blank lines
// do not count.
func (s *style) inSight(lines []string, top, room, width int) []string {
	seen := make([]string, room)
	copy(seen, lines[min(top, len(lines)):])
	if room < 3 {
		return seen
	}
	sign := func(text string) string { return s.quiet.Render(safetext.Fit("  "+text, width)) }
	if filled(lines[:top]) > 0 {
		seen[0] = sign("↑ " + s.lang.Form.MoreAbove(filled(lines[:top+1])))
	}
	if end := top + room; end < len(lines) && filled(lines[end:]) > 0 {
		seen[room-1] = sign("↓ " + s.lang.Form.MoreBelow(filled(lines[end-1:])))
	}
	return seen
}

// filled returns how many lines are not blank.
func filled(lines []string) (n int) {
	for _, l := range lines {
		if strings.TrimSpace(ansi.Strip(l)) != "" {
			n++
		}
	}
	return n
}

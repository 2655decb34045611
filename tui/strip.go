package tui

import (
	"strings"
	"time"

	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/strip"
	"coldfloor/tui/palette"
)

// stripLine draws the session with the player's place in it: what is behind
// is faint, the place stands out, what is ahead has its colours.
func (s *style) stripLine(st *strip.Strip, clock time.Duration) string {
	at := st.Place(clock)
	var b strings.Builder
	put := func(look lipgloss.Style, part strip.Part, from, to int) {
		if from < to {
			b.WriteString(look.Render(strings.Repeat(string(strip.Mark(part.Kind, s.shown)), to-from)))
		}
	}
	for _, part := range st.Parts {
		ahead := s.ink(palette.OfKind(part.Kind))
		put(s.quiet, part, part.From, min(part.To, at))
		if at >= part.From && at < part.To {
			b.WriteString(s.strong.Render(s.placeMark()))
		}
		put(ahead, part, max(part.From, at+1), part.To)
	}
	return b.String()
}

// placeMark is the character for the player's place.
func (s *style) placeMark() string {
	if place := "▼"; s.shown.Has(place) {
		return place
	}
	return "@"
}

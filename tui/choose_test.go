package tui

import (
	"coldfloor/internal/text"
	"fmt"
	"strings"
	"testing"

	"github.com/muesli/termenv"

	"coldfloor/internal/run"
	"coldfloor/tui/glyph"
)

// TestNoSessionIsHiddenWithoutASign: in any window each session is listed, or
// counted among those above or below, and the one at the cursor is listed.
func TestNoSessionIsHiddenWithoutASign(t *testing.T) {
	p := evening(t)
	for _, height := range []int{12, 13, 16, 24, 50} {
		for n := 1; n < 20; n++ {
			var offers []run.Offer
			for i := range n {
				s := *p.Session
				s.Title = fmt.Sprintf("Session %02d", i)
				q := *p
				q.Session = &s
				offers = append(offers, run.Offer{Plan: &q})
			}
			for at := range n {
				m := chooseScreen{offers: offers, style: testStyle(termenv.Ascii, glyph.Quadrant), keys: newListKeys(&text.English.Keys), at: at, width: 40, height: height}
				listed, counted := 0, 0
				view := m.View()
				for _, l := range strings.Split(view, "\n") {
					var hidden int
					if _, err := fmt.Sscanf(strings.TrimLeft(l, " ↑↓"), "%d more", &hidden); err == nil {
						counted += hidden
					}
					listed += strings.Count(l, "Session ")
				}
				if listed+counted != n || !strings.Contains(view, fmt.Sprintf("> Session %02d", at)) {
					t.Fatalf("%d listed and %d counted of %d, cursor at %d, in %d lines:\n%s", listed, counted, n, at, height, view)
				}
				fits(t, view, 40, height)
			}
		}
	}
}

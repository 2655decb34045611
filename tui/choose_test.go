package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/tui/glyph"
)

// TestNoSessionIsHiddenWithoutASign: in any window each session is listed, or
// counted among those above or below, and the one at the cursor is listed.
func TestNoSessionIsHiddenWithoutASign(t *testing.T) {
	p := evening(t)
	for _, height := range []int{4, 5, 7, 11, 12, 13, 16, 24, 50} {
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

// TestTitlesAreWhole: in the narrowest window each built-in session can be told
// by its whole title, in every language, and when the one at the cursor was done
// last is said.
func TestTitlesAreWhole(t *testing.T) {
	offers, _ := run.Catalogue(t.TempDir())
	for _, code := range text.Codes() {
		l := text.In(code)
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = l
		for at, o := range offers {
			m := newChooseScreen(offers, nil, time.Now(), s)
			m.at, m.width, m.height = at, 40, 12
			view := m.View()
			fits(t, view, 40, 12)
			if title := "> " + l.Title(o.Plan.Session.Title) + "  "; !strings.Contains(view, title) || !strings.Contains(view, l.Choose.NotYet) {
				t.Errorf("%s: lacks %q or %q:\n%s", code, title, l.Choose.NotYet, view)
			}
		}
	}
}

// Contacts that nobody counted make those of the list a least figure, or a dash.
func TestContactsAtLeast(t *testing.T) {
	for contacts, want := range map[string]string{", contacts: 1": "≥ 3", "": "–", ", contacts: 0": "–"} {
		s, err := sessions.Parse("a.yaml", []byte("coldfloor: 1\ntitle: S\nblocks: [{title: Up, exercises: [{name: Hop, reps: 3"+contacts+"}, {name: Tuck jumps, reps: 5}]}]"))
		if err != nil {
			t.Fatal(err)
		}
		m := newChooseScreen(nil, nil, time.Now(), testStyle(termenv.Ascii, glyph.Quadrant))
		if got := m.columns(&run.Offer{Plan: plan.Of(s)})[3]; got != want {
			t.Errorf("with %q %q, want %q", contacts, got, want)
		}
	}
}

// A session from a file names it under the list: a copy of a built-in one has
// the same title.
func TestFileIsNamed(t *testing.T) {
	m := newChooseScreen([]run.Offer{{Plan: evening(t), File: "folder/mine.yaml"}, {Plan: evening(t)}}, nil, time.Now(), testStyle(termenv.Ascii, glyph.Quadrant))
	m.width, m.height = 80, 24
	for at, named := range []bool{true, false} {
		m.at = at
		view := m.View()
		fits(t, view, 80, 24)
		if strings.Contains(view, "  mine.yaml") != named {
			t.Errorf("at %d:\n%s", at, view)
		}
	}
}

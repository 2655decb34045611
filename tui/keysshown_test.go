package tui

import (
	"strings"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"coldfloor/internal/text"
	"coldfloor/tui/glyph"
)

// The list of keys has room in every window and language, what every other key
// does included.
func TestListOfKeysIsWhole(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		for _, size := range sizes[:2] { // in larger ones it is drawn in large letters
			m := momentOf(t, 35*time.Second, "?", s).resized(size.width, size.height)
			view := m.View()
			wants := []string{s.lang.Keys.AnyOther, s.lang.Screen.HelpBack}
			for _, column := range m.keys.FullHelp() {
				for _, b := range column {
					wants = append(wants, b.Help().Desc)
				}
			}
			for _, want := range wants {
				if !strings.Contains(view, want) {
					t.Errorf("%s at %d×%d lacks %q:\n%s", code, size.width, size.height, want, view)
				}
			}
		}
	}
}

// How to leave a list is shown in the narrowest window.
func TestListSaysHowToLeave(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		m := newChooseScreen(nil, nil, time.Time{}, s)
		m.width, m.height = 40, 12
		if view := m.View(); !strings.Contains(view, s.lang.Keys.Choose) || !strings.Contains(view, s.lang.Keys.Leave) {
			t.Errorf("%s shows\n%s", code, view)
		}
	}
}

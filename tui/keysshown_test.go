package tui

import (
	"slices"
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
			wants := []string{s.lang.Keys.StopToo, s.lang.Keys.AnyOther, s.lang.Screen.HelpBack}
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

// In windows too small for a page of keys the key that lists them turns through
// all of them, with what goes on in the first line, and then goes back.
func TestKeysInTinyWindows(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		for _, size := range []struct{ width, height int }{{20, 5}, {20, 24}, {39, 11}, {39, 3}, {80, 8}, {200, 5}} {
			m := momentOf(t, 35*time.Second, "", s).resized(size.width, size.height)
			session, seen := m.View(), ""
			for m = press(m, "?"); m.helping; m = press(m, "?") {
				view := m.View()
				fits(t, view, size.width, size.height)
				lines := strings.Split(view, "\n")
				if !strings.HasPrefix(lines[0], s.lang.Screen.Work+" 3") {
					t.Errorf("%s at %d×%d does not begin with what goes on:\n%s", code, size.width, size.height, view)
				}
				if foot := lines[len(lines)-1]; !strings.HasPrefix(foot, "? ") || strings.Contains(foot, "…") {
					t.Errorf("%s at %d×%d ends in %q", code, size.width, size.height, foot)
				}
				seen += strings.Join(lines[1:len(lines)-1], " ") + " "
			}
			seen = strings.Join(strings.Fields(seen), " ")
			for _, want := range everyKey(m) {
				if !strings.Contains(seen, want) {
					t.Errorf("%s at %d×%d lacks %q: %s", code, size.width, size.height, want, seen)
				}
			}
			if m.View() != session {
				t.Errorf("%s at %d×%d does not go back to the session:\n%s", code, size.width, size.height, m.View())
			}
		}
	}
}

// everyKey returns what a list of the keys has to say.
func everyKey(m runScreen) []string {
	all := []string{m.style.lang.Keys.StopToo, m.style.lang.Keys.AnyOther}
	for _, b := range slices.Concat(m.keys.FullHelp()...) {
		all = append(all, b.Help().Key+" "+b.Help().Desc)
	}
	return all
}

// A window that grows while the keys are shown shows a page that there is.
func TestKeysWhileTheWindowGrows(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	m := momentOf(t, 35*time.Second, "???", s).resized(20, 5)
	m = press(m, "?", "?", "?")
	for _, size := range []struct{ width, height int }{{39, 11}, {80, 24}} {
		m = m.resized(size.width, size.height)
		if view := m.View(); !strings.Contains(view, "?") || m.page >= m.helpPages() {
			t.Errorf("page %d of %d:\n%s", m.page, m.helpPages(), view)
		}
	}
	if m = press(m, "?"); m.helping {
		t.Error("the list is not closed")
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

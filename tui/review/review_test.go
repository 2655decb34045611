package review

import (
	"flag"
	"io"
	"strings"
	"testing"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/report"
	"coldfloor/internal/report/reporttest"
	"coldfloor/internal/review"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
)

var update = flag.Bool("update", false, "rewrite the golden files; look at them before you commit")

// look is a terminal without colour.
func look() *lipgloss.Renderer {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.Ascii)
	return r
}

func model(set glyph.Set, names ...string) Model {
	return New(Options{Squad: report.InView(reporttest.Squad(names...), 12), By: review.ByName, Glyphs: set, Look: look()})
}

// press types keys by their names, after the window has its size.
func press(m Model, width, height int, keys ...string) Model {
	var t tea.Model = m
	t, _ = t.Update(tea.WindowSizeMsg{Width: width, Height: height})
	for _, k := range keys {
		t, _ = t.Update(keyOf(k))
	}
	return t.(Model)
}

// named are the keys that are not what they type.
var named = map[string]tea.KeyType{"up": tea.KeyUp, "down": tea.KeyDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"enter": tea.KeyEnter, "esc": tea.KeyEsc, "tab": tea.KeyTab, "pgdown": tea.KeyPgDown, "pgup": tea.KeyPgUp, "home": tea.KeyHome,
	"end": tea.KeyEnd, "ctrl+c": tea.KeyCtrlC}

func keyOf(name string) tea.KeyMsg {
	if t, ok := named[name]; ok {
		return tea.KeyMsg{Type: t}
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(name)}
}

// states are the screens that the goldens show, by the keys that lead there.
var states = []struct {
	name  string
	squad bool
	keys  []string
}{
	{"squad", true, []string{"down"}},
	{"overview", false, nil},
	{"weeks", false, []string{"tab"}},
	{"rest", false, []string{"tab", "tab"}},
	{"load", false, []string{"tab", "tab", "tab"}},
	{"load-below", false, []string{"tab", "tab", "tab", "end"}},
	{"pain", false, []string{"tab", "tab", "tab", "tab"}},
	{"sessions", false, []string{"enter", "down", "down", "down", "down"}},
	{"session", false, []string{"enter", "enter"}},
	{"meaning", false, []string{"left"}},
	{"keys", true, []string{"?"}},
}

// Everything a page holds can be scrolled to.
func TestScrollingReachesTheEnd(t *testing.T) {
	for v := range viewNames {
		for _, w := range []int{40, 120} {
			keys := make([]string, v)
			for i := range keys {
				keys[i] = "tab"
			}
			m := press(model(glyph.Quadrant, "Player 1"), w, 12, append(keys, "end")...)
			last := strings.TrimSpace(ansi.Strip(m.page.lines[len(m.page.lines)-1]))
			if !strings.Contains(ansi.Strip(m.View()), last) {
				t.Errorf("%s, %d wide: no %q in\n%s", viewNames[v], w, last, m.View())
			}
			if top := press(m, w, 12, "home"); top.page.top != 0 {
				t.Errorf("%s: home leads to line %d", viewNames[v], top.page.top)
			}
		}
	}
}

// The cursor stays on its player when the squad is sorted.
func TestSortKeepsTheCursor(t *testing.T) {
	m := press(model(glyph.Quadrant, reporttest.Names...), 80, 24, "down")
	on := m.current().Name
	if fast := press(m, 80, 24, "ssss"); fast.opts.By != review.ByContacts {
		t.Errorf("four keys at once sort by %s", fast.opts.By)
	}
	for range review.Columns {
		for _, k := range []string{"s", "r"} {
			m = press(m, 80, 24, k)
			if m.current().Name != on {
				t.Fatalf("sorted by %s the cursor is on %s, was on %s", m.opts.By, m.current().Name, on)
			}
		}
	}
	if m.opts.By != review.ByName {
		t.Errorf("after all columns it is sorted by %s", m.opts.By)
	}
}

// Down to a session and back, one step at a time; the last step leaves.
func TestDrillDown(t *testing.T) {
	m := press(model(glyph.Quadrant, reporttest.Names...), 120, 40, "down", "enter")
	for _, want := range []string{"Player 2", "Pogo hops, 10 reps", "Squad of 3"} {
		if want == "Pogo hops, 10 reps" {
			m = press(m, 120, 40, "enter", "down", "enter")
		}
		if want == "Squad of 3" {
			m = press(m, 120, 40, "esc", "esc")
		}
		if !strings.Contains(m.View(), want) {
			t.Fatalf("no %q in\n%s", want, m.View())
		}
	}
	for _, k := range []string{"q", "esc", "ctrl+c"} {
		_, cmd := m.Update(keyOf(k))
		if cmd == nil {
			t.Fatalf("%s does not leave", k)
		}
		if _, ok := cmd().(tea.QuitMsg); !ok {
			t.Errorf("%s does not leave", k)
		}
	}
}

// Pain is what a coach sees first of a player, without a key.
func TestPainComesFirst(t *testing.T) {
	for _, size := range []struct{ w, h int }{{40, 12}, {80, 24}} {
		lines := strings.Split(press(model(glyph.Quadrant, "Player 1"), size.w, size.h).View(), "\n")
		if first := strings.Join(lines[2:5], "\n"); !strings.HasPrefix(first, "pain") || !strings.Contains(first, "PAIN in 1 session") || !strings.Contains(first, "the last: left knee") {
			t.Errorf("at %d×%d a player begins with\n%s", size.w, size.h, first)
		}
	}
}

// What goes on beside a window has a sign, at the side where it goes on.
func TestWhatIsCutHasASign(t *testing.T) {
	m := press(model(glyph.Quadrant, "Player 1"), 40, 12, "enter", "enter")
	for _, c := range []struct{ key, want string }{{"", "Wednesday 6 May 2026 16:"}, {"right", "…"}} {
		if c.key != "" {
			m = press(m, 40, 12, c.key)
		}
		for _, l := range strings.Split(m.View(), "\n")[2:11] {
			if ansi.StringWidth(l) == 40 && !strings.HasSuffix(l, "…") {
				t.Errorf("%q goes on, and says it nowhere", l)
			}
			if c.key != "" && l != "" && !strings.HasPrefix(l, "…") && !strings.HasPrefix(l, " ") {
				t.Errorf("%q began further left, and says it nowhere", l)
			}
		}
	}
}

// In the narrowest window pain and the title of a session are still to be read.
func TestSessionsInANarrowWindow(t *testing.T) {
	view := press(model(glyph.Quadrant, "Player 1"), 40, 12, "enter").View()
	for _, want := range []string{"date", "title", "pain"} {
		if !strings.Contains(view, want) {
			t.Errorf("no %q in\n%s", want, view)
		}
	}
}

// Every key that the help names does what it says somewhere, and the help
// names every key.
func TestHelpNamesEveryKey(t *testing.T) {
	m := press(model(glyph.Quadrant, reporttest.Names...), 80, 30, "?")
	for _, b := range m.keys.of(onSquad) {
		if !strings.Contains(m.View(), b.Help().Desc) {
			t.Errorf("the help does not say %q:\n%s", b.Help().Desc, m.View())
		}
		for _, k := range b.Keys()[1:] {
			if k = strings.Replace(k, " ", "space", 1); !strings.Contains(m.View(), ", "+k) {
				t.Errorf("the help does not name %q:\n%s", k, m.View())
			}
		}
	}
	if m = press(m, 80, 30, "down"); strings.Contains(m.View(), "any key") || m.player != 0 {
		t.Error("a key does not leave the help, or does more than that")
	}
	for _, k := range []string{"end", "pgdown"} { // in a low window the list is moved through
		m = press(model(glyph.Quadrant, reporttest.Names...), 40, 12, "?", k)
		if !strings.Contains(m.View(), "to the end") || m.player != 0 {
			t.Errorf("%s does not lead to the last keys:\n%s", k, m.View())
		}
	}
	if m = press(m, 40, 12, "x"); strings.Contains(m.View(), "any other key") {
		t.Error("a key does not leave the help in a low window")
	}
}

// lean is a font of a console as most systems load it: no half cells, no ring.
var lean = safetext.Repertoire{'│': 1, '─': 2, '└': 3, '█': 4, '░': 5, '●': 6, '•': 6, '·': 7, '↑': 8, '↓': 9, '←': 10, '→': 11}

// TestFontOfTheConsole: charts are drawn with what the font has, and nothing is a
// question mark for want of a character.
func TestFontOfTheConsole(t *testing.T) {
	for name, c := range map[string]struct {
		set        glyph.Set
		font, have safetext.Repertoire
		rest, load string // what is drawn with
	}{
		"its own": {glyph.Half, nil, safetext.Console, "│•", "∙═"},
		"lean":    {glyph.Full, lean, lean, "|@", "*="},
		"none":    {glyph.Plain, lean, safetext.Repertoire{}, "|@", "*="},
	} {
		for _, s := range states {
			m := New(Options{Squad: report.InView(reporttest.Squad("Player 1"), 12), By: review.ByName, Glyphs: c.set, Font: c.font, Look: look()})
			if s.squad {
				continue
			}
			frame := press(m, 80, 90, s.keys...).View()
			for _, r := range frame {
				if r >= 0x80 && !c.have.Has(string(r)) {
					t.Fatalf("%s, %s: %c is not shown", name, s.name, r)
				}
			}
			if n := strings.Count(frame, "?"); s.name != "keys" && n != 1 { // the key
				t.Errorf("%s, %s: %d question marks", name, s.name, n)
			}
			for _, r := range map[string]string{"rest": c.rest, "load": c.load}[s.name] {
				if !strings.ContainsRune(frame, r) {
					t.Errorf("%s, %s: no %c", name, s.name, r)
				}
			}
		}
	}
}

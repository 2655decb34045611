package tui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/tui/glyph"
)

// tests is a plan of a jump and a hop on each leg, twice: each jump ends at 11 s
// or so after the set before.
func tests(t testing.TB) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("tests.yaml", []byte(`coldfloor: 1
title: Tests
lead_in: 1s
blocks:
- title: Hops
  rounds: 2
  rest: 30s
  exercises:
  - {name: Hop, reps_per_side: 1, rep: 5s, switch: 2s, measure: distance, way: tape}
`))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// typedOf returns the keys of a text; < is Backspace, ! Enter and ~ Escape.
func typedOf(text string) []tea.KeyMsg {
	special := map[rune]tea.KeyType{'<': tea.KeyBackspace, '!': tea.KeyEnter, '~': tea.KeyEsc}
	var keys []tea.KeyMsg
	for _, r := range text {
		k := tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune{r}}
		if kind, ok := special[r]; ok {
			k = tea.KeyMsg{Type: kind}
		}
		keys = append(keys, k)
	}
	return keys
}

// due lists the tries that are asked for.
func due(r *run.Active) string {
	var list []string
	for _, t := range r.Due() {
		list = append(list, text.English.Try(t))
	}
	return strings.Join(list, "; ")
}

// TestResultsAreTypedInTheRest types what came out of each side while the rest
// goes on.
func TestResultsAreTypedInTheRest(t *testing.T) {
	m, c := newTestRun(t, tests(t), engine.Options{}, testStyle(termenv.Ascii, glyph.Quadrant))
	m = c.at(m, 7*time.Second) // the switch: the set is not over
	if due(m.run) != "" {
		t.Fatalf("%s due between the sides", due(m.run))
	}
	m = c.at(m, 14*time.Second)
	if due(m.run) != "try 1, left; try 1, right" {
		t.Fatalf("due: %s", due(m.run))
	}
	type step struct{ keys, due, shown string }
	for _, s := range []step{
		{"23", "try 1, left; try 1, right", "23_ cm"},
		{"<<2!", "try 1, left; try 1, right", "once more"},
		{"<171,5", "try 1, left; try 1, right", "171,5_ cm"},
		{"!", "try 1, right", "try 1, right"},
		{"16", "try 1, right", "16_ cm"},
	} {
		for _, k := range typedOf(s.keys) {
			m, _ = m.pressed(k)
		}
		screen := ansi.Strip(m.resized(60, 16).View())
		if due(m.run) != s.due || !strings.Contains(screen, s.shown) {
			t.Errorf("after %q due: %s, seen\n%s", s.keys, due(m.run), screen)
		}
	}
	if v := m.run.View(); m.run.Plan().Steps[v.Step].Kind != plan.Rest || v.Phase != engine.Running {
		t.Errorf("the rest does not go on: %+v", v)
	}
	m = c.at(m, 44*time.Second) // into the work that follows
	for _, k := range typedOf("8") {
		m, _ = m.pressed(k)
	}
	if v := m.run.View(); m.run.Plan().Steps[v.Step].Kind != plan.Work {
		t.Error("a figure typed too late ended the set")
	}
}

// TestResultsInATinyWindow: what is asked for, what was typed and what is wrong
// with it are whole in a window too small for a frame, in every language.
func TestResultsInATinyWindow(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		m, c := newTestRun(t, tests(t), engine.Options{}, s)
		m = c.at(m, 14*time.Second).resized(20, 5)
		first := m.run.Due()[0]
		for _, step := range []struct{ keys, want string }{
			{"", s.lang.Try(first) + ": _ cm"}, {"23", s.lang.Try(first) + ": 23_ cm"}, {"<<!", s.lang.NoResult(first.Measure)},
		} {
			for _, k := range typedOf(step.keys) {
				m, _ = m.pressed(k)
			}
			if view := m.View(); !strings.Contains(strings.Join(strings.Fields(view), " "), step.want) {
				t.Errorf("%s: after %q %q is not on\n%s", code, step.keys, step.want, view)
			}
		}
	}
}

// TestResultsAtTheEnd asks for what is still due, without a limit of time.
func TestResultsAtTheEnd(t *testing.T) {
	m, c := newTestRun(t, tests(t), engine.Options{}, testStyle(termenv.Ascii, glyph.Quadrant))
	m = c.at(m, 2*time.Minute)
	if m.run.View().Phase != engine.Over {
		t.Fatal("the session is not over")
	}
	r := resultsScreen{run: m.run, style: m.style}
	var cmd tea.Cmd
	for _, s := range []struct{ keys, due, shown string }{
		{"", "try 1, left; try 1, right; try 2, left; try 2, right", "3 more to come"},
		{"170!", "try 1, right; try 2, left; try 2, right", "Hop, try 1, left: 170 cm"},
		{"~", "try 2, left; try 2, right", "Hop, try 1, right: left out"},
		{"1,70m", "try 2, left; try 2, right", "1,70_ cm"},
		{"<<<<172!173!", "", ""},
	} {
		for _, k := range typedOf(s.keys) {
			r, cmd = r.Update(k)
		}
		if screen := ansi.Strip(r.View(40, 12)); due(m.run) != s.due || !strings.Contains(screen, s.shown) {
			t.Errorf("after %q due: %s, seen\n%s", s.keys, due(m.run), screen)
		}
	}
	if cmd == nil || cmd() != (resultsDone{}) {
		t.Error("the form does not follow")
	}
}

package tui

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/internal/today"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// TestWordsOfPhases: in every language each phase has a word of its own, in
// capitals, which can be drawn large.
func TestWordsOfPhases(t *testing.T) {
	for _, code := range text.Codes() {
		seen := map[string]bool{}
		for p := range palette.Done + 1 {
			word := wordOf(text.In(code), p)
			if seen[word] || word != strings.ToUpper(word) || !glyph.Has(word) {
				t.Errorf("%s: %q is said twice, is no word in capitals or cannot be drawn", code, word)
			}
			seen[word] = true
		}
	}
}

// walker goes through the program in a language whose every letter is marked,
// and looks at each screen.
type walker struct {
	*program
	known string // what a screen may hold besides the language
	file  string // the journal
}

// walks are ways through the program: keys, and times that pass.
var walks = map[string]string{
	"choose":     "down down up enter",
	"run":        "enter ? ? 12s space e e p p 20s + 10s left r right m m up down 40s q x q q",
	"finish":     "enter right right 20s q q 6 down down left down k n e e down ! enter enter enter",
	"full disk":  "enter 30s full q q 6 esc t b esc w",
	"measures":   "enter 9m 2 3 1 . x enter backspace enter esc 20m 1 2 enter q q",
	"unfinished": "enter 30s again n again g 10s q q",
}

// TestLanguage: no screen has a word that is neither the language's nor the
// session's.
func TestLanguage(t *testing.T) {
	for name, way := range walks {
		for _, size := range []tea.WindowSizeMsg{{Width: 80, Height: 24}, {Width: 40, Height: 12}, {Width: 120, Height: 40}} {
			t.Run(fmt.Sprintf("%s/%dx%d", name, size.Width, size.Height), func(t *testing.T) {
				t.Chdir(t.TempDir())
				o := run.Options{Language: texttest.Marked(), Journal: filepath.Join(t.TempDir(), "data", "journal.jsonl")}
				p, known := walked(t, name)
				if name != "choose" {
					o.Plan = p
				}
				w := &walker{program: newProgram(t, o), known: known, file: o.Journal}
				w.send(size)
				w.walk(o, way)
			})
		}
	}
}

// walked returns the session of a walk, and the texts that its screens may hold.
func walked(t *testing.T, name string) (p *plan.Plan, known string) {
	known = "journal jsonl coldfloor "
	for _, b := range sessions.Builtins() {
		known += string(b.Source)
	}
	if name != "measures" {
		o, err := weeks.Open(filepath.Join(packageFolder, "testdata", "session.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		return plan.Of(o.Session), known + string(o.Session.Source)
	}
	b, _ := sessions.FindBuiltin("test-day")
	s, err := b.Session()
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s), known
}

// packageFolder is where the tests began, which some leave.
var packageFolder, _ = os.Getwd()

// walk goes a way.
func (w *walker) walk(o run.Options, way string) {
	w.look()
	for _, step := range strings.Fields(way) {
		d, err := time.ParseDuration(step)
		switch {
		case err == nil:
			w.pass(d)
		case step == "full":
			takeAway(w.t, o.Journal)
		case step == "again":
			if err := w.flow.Close(); err != nil {
				w.t.Fatal(err)
			}
			size := tea.WindowSizeMsg{Width: w.app.width, Height: w.app.height}
			w.program = newProgram(w.t, o)
			w.send(size)
		default:
			w.keys(step)
		}
		w.look()
	}
}

// look looks for words on the screen that no language has.
func (w *walker) look() {
	w.t.Helper()
	shown := ansi.Strip(w.app.View()) + "\n" + w.app.Closing()
	folder, _ := os.Getwd()
	if words := texttest.Unmarked(strings.ReplaceAll(shown, folder, ""), w.known, w.file); len(words) > 0 {
		w.t.Errorf("%q on\n%s", words, shown)
	}
}

// TestLanguageOfToday: nor has any day of a plan of weeks.
func TestLanguageOfToday(t *testing.T) {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(termenv.Ascii)
	l := texttest.Marked()
	s := newStyle(r, glyph.Plain, l)
	p := winter(t)
	for _, day := range []string{"2026-12-01", "2026-12-07", "2026-12-08", "2026-12-09", "2026-12-10", "2026-12-11", "2026-12-16", "2026-12-25"} {
		date, err := units.ParseDate(day)
		if err != nil {
			t.Fatal(err)
		}
		q := questionOfToday(today.On(p, nil, date, 48*time.Hour), l, true)
		if words := texttest.Unmarked(q.View(s, 120, 40), "Two weeks of winter hops floor"); len(words) > 0 {
			t.Errorf("%s: %q in\n%s", day, words, q.View(s, 120, 40))
		}
	}
}

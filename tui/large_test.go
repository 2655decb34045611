package tui

import (
	"fmt"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/engine"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/tui/glyph"
)

// asked are the screens that ask a player something, who may stand away.
func asked(t *testing.T, s *style, width, height int) map[string]string {
	q := questionOf(&run.Ask{Title: "Before you start", Text: []string{"Pain was noted last time: left knee. Leave jumps out, or stop at the first sign of it.",
		"The last jumps were 20 h ago; 48 h are advised between two sessions of jumps."},
		Answers: []run.Answer{{Key: "enter", Label: "start all the same", Enter: true}, {Key: "c", Label: "choose another session"}, {Key: "q", Label: "leave", Leave: true}}})
	form := newFinishScreen(nil, nil, "Hallway speed A: 12:30 of 30:00, 5 of 9 rounds", s).resized(width, height)
	m, c := newTestRun(t, tests(t), engine.Options{}, s)
	c.at(m, 2*time.Minute)
	keys, _ := form.move(1)
	return map[string]string{"question": q.View(s, width, height), "effort": form.View(), "pain": keys.View(),
		"result": resultsScreen{run: m.run, style: s, entry: entry{text: "45"}}.View(width, height)}
}

// TestAskedInLargeLetters: in a large window what is asked, and the answers to
// it, can be read from afar, in a small one nothing is missing, and none is too
// small to be drawn on, in any language.
func TestAskedInLargeLetters(t *testing.T) {
	for _, l := range []*text.Language{&text.English, &text.German} {
		for _, size := range append(sizes, struct{ width, height int }{200, 50}, struct{ width, height int }{10, 3}) {
			s := testStyle(termenv.TrueColor, glyph.Quadrant)
			s.lang = l
			for name, screen := range asked(t, s, size.width, size.height) {
				name = fmt.Sprintf("asked-%s-%s-%dx%d", name, l.Code, size.width, size.height)
				large := strings.Count(ansi.Strip(screen), "█")
				if tall := size.height >= 50; tall && large < 100 {
					t.Errorf("%s: nothing is large", name)
				}
				fits(t, screen, size.width, size.height)
				if *pictures != "" {
					picture(t, filepath.Join(*pictures, name+".svg"), screen, size.width, size.height)
				}
			}
		}
	}
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	for name, wants := range map[string][]string{
		"question": {"Before you start", "20 h ago", "enter  start", "c      choose", "q      leave"},
		"effort":   {"Effort", "0 rest", "10 maximal", "enter next"},
		"pain":     {"> Pain", "enter next"},
		"result":   {"45_ cm"},
	} {
		screen := asked(t, s, 40, 12)[name]
		for _, want := range wants {
			if !strings.Contains(screen, want) {
				t.Errorf("%s lacks %q:\n%s", name, want, screen)
			}
		}
	}
}

// TestStopIsAskedInLargeLetters: whether to stop, and the keys that answer it, are
// as large in every phase and language from the usual window on.
func TestStopIsAskedInLargeLetters(t *testing.T) {
	for _, code := range text.Codes() {
		for _, size := range sizes[1:] {
			for _, mo := range moments {
				s := testStyle(termenv.Ascii, glyph.Quadrant)
				s.lang = text.In(code)
				m := momentOf(t, mo.at, mo.keys, s).resized(size.width, size.height)
				if m.over() || m.asking || m.helping {
					continue
				}
				m = press(m, "q")
				v := m.run.View()
				f := m.frame(v)
				for _, first := range []string{s.lang.Screen.Stop[1], s.lang.Screen.StopUnlogged} {
					f.asked = []string{s.lang.Screen.Stop[0], first, s.lang.Screen.Stop[2]}
					p := f.parts()
					if lines := f.question(p.exercise+p.dose+p.cue, p.time/4); strings.Contains(strings.Join(lines, "\n"), first) {
						t.Errorf("%s, %s at %d×%d: %q is small", code, mo.name, size.width, size.height, first)
					}
				}
			}
		}
	}
}

// TestResultKeysInLargeLetters: what enters a result, or leaves it out, can be read
// from where the player stands, below what was typed.
func TestResultKeysInLargeLetters(t *testing.T) {
	for _, code := range text.Codes() {
		for _, size := range sizes[2:] {
			s := testStyle(termenv.Ascii, glyph.Quadrant)
			s.lang = text.In(code)
			screen := asked(t, s, size.width, size.height)["result"]
			large := false
			for rows := range size.height {
				hint, _ := s.letters(s.lang.Screen.KeepResult, size.width-2, rows, mostAnswer)
				large = large || len(hint) > 0 && strings.Contains(screen, strings.TrimRight(hint[len(hint)-1], " "))
			}
			if !large {
				t.Errorf("%s at %d×%d: %q is not large in\n%s", code, size.width, size.height, s.lang.Screen.KeepResult, screen)
			}
		}
	}
}

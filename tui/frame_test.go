package tui

import (
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/charmbracelet/x/vt"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/termshot"
	"coldfloor/sessions/weeks"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

var (
	update   = flag.Bool("update", false, "rewrite what is kept under testdata; read it before you commit")
	pictures = flag.String("pictures", "", "write each golden frame as an SVG into this `folder`")
)

// evening is the plan of the session in testdata.
func evening(t testing.TB) *plan.Plan {
	t.Helper()
	o, err := weeks.Open("testdata/session.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(o.Session)
}

// handClock is a clock that a test sets.
type handClock struct{ now time.Duration }

func (c *handClock) Mono() time.Duration { return c.now }
func (c *handClock) Wall() time.Time     { return time.Date(2026, 1, 10, 18, 0, 0, 0, time.UTC).Add(c.now) }

// at moves the clock on in steps that a watch takes for an ordinary look.
func (c *handClock) at(m runScreen, now time.Duration) runScreen {
	for c.now < now {
		c.now = min(now, c.now+time.Second)
		m = m.look()
	}
	return m
}

// testStyle is the style of a terminal that shows what profile says, on a dark
// ground.
func testStyle(profile termenv.Profile, set glyph.Set) *style {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetColorProfile(profile)
	r.SetHasDarkBackground(true)
	return newStyle(r, set, &text.English)
}

// newTestRun returns the screen of a run of p, started, without a log and
// without sound.
func newTestRun(t testing.TB, p *plan.Plan, o engine.Options, s *style) (runScreen, *handClock) {
	t.Helper()
	c := &handClock{}
	m := newRunScreen(run.Bare(p, o, c), s, Reading{}).resized(80, 24)
	m, _ = m.start()
	return m, c
}

// moments are one of every phase, and of every part of a phase that looks its
// own way.
var moments = []struct {
	name string
	at   time.Duration
	keys string
}{
	{"lead-in", 1200 * time.Millisecond, ""},
	{"lead-in-last", 2500 * time.Millisecond, ""},
	{"work", 7 * time.Second, ""},
	{"work-last", 12900 * time.Millisecond, ""},
	{"change", 16 * time.Second, ""},
	{"left", 35 * time.Second, ""},
	{"switch", 50500 * time.Millisecond, ""},
	{"right", 60 * time.Second, ""},
	{"own-pace", 100 * time.Second, ""},
	{"rest", 107 * time.Second, " "},
	{"rest-ends", 117 * time.Second, " "},
	{"rest-last", 124100 * time.Millisecond, " "},
	{"paused", 35 * time.Second, "p"},
	{"count-in", 35 * time.Second, "pp"},
	{"easier", 35 * time.Second, "e"},
	{"asking", 35 * time.Second, "q"},
	{"help", 35 * time.Second, "?"},
	{"paused-rest", 106 * time.Second, " p"},
	{"done", 7 * time.Second, skipToEnd},
}

// skipToEnd stands for as many skips as it takes.
const skipToEnd = "→"

var sizes = []struct{ width, height int }{{40, 12}, {80, 24}, {120, 40}, {200, 60}}

// TestFrames holds every moment at every size against the golden frames. Each
// was looked at before it was kept.
func TestFrames(t *testing.T) {
	for _, mo := range moments {
		for _, size := range sizes {
			name := fmt.Sprintf("%s-%dx%d", mo.name, size.width, size.height)
			t.Run(name, func(t *testing.T) {
				frame := func(s *style) string { return momentOf(t, mo.at, mo.keys, s).resized(size.width, size.height).View() }
				drab := frame(testStyle(termenv.Ascii, glyph.Quadrant))
				golden(t, filepath.Join("testdata", "frames", name+".txt"), drab+"\n")
				coloured := frame(testStyle(termenv.TrueColor, glyph.Quadrant))
				if mo.keys == "" && !strings.Contains(mo.name, "last") && ansi.Strip(coloured) != drab && !sided(mo.name) {
					t.Error("colour changes more than the colour")
				}
				fits(t, coloured, size.width, size.height)
				if *pictures != "" {
					picture(t, filepath.Join(*pictures, name+".svg"), coloured, size.width, size.height)
				}
			})
		}
	}
}

// sided reports whether a moment's edges are filled by colour alone where there
// is any.
func sided(name string) bool {
	return slices.Contains([]string{"change", "left", "right", "switch"}, name)
}

// In a window too small for a frame it is said in as many lines as it takes,
// with the side.
func TestTooSmallForAFrame(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	for keys, want := range map[string]string{
		"":   "WORK 3 of 5 0:15\ndown 3\nRear-foot-raised\nsplit squat, left\nside",
		"q":  "WORK 3 of 5 0:15\ndown 3\nRear-foot-raised\nsplit squat, left s…\nStop? q stops",
		"m":  "WORK 3 of 5 0:15\ndown 3\nRear-foot-raised\nsplit squat, left s…\nsound off",
		"ep": "PAUSED p to resume\nSplit squat, both\nfeet on the floor,\n0:15 to go",
	} {
		if got := momentOf(t, 35*time.Second, keys, s).resized(20, 5).View(); got != want {
			t.Errorf("after %q it shows\n%s\nwant\n%s", keys, got, want)
		}
	}
}

// In a rest what is named is the next exercise, in a window too small for a frame
// and above the list of keys too.
func TestRestNamesTheNext(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		want := capital(s.lang.Screen.Next) + ": Pogo"
		for _, m := range []runScreen{momentOf(t, 107*time.Second, " ", s).resized(20, 5), momentOf(t, 107*time.Second, " ?", s)} {
			if view := strings.Join(strings.Fields(m.View()), " "); !strings.Contains(view, want) {
				t.Errorf("%s: %q is not in %q", code, want, view)
			}
		}
	}
}

// momentOf returns the screen of the test session at a time, after keys. The
// hand-ended set ends where its pace would have it.
func momentOf(t testing.TB, at time.Duration, keys string, s *style) runScreen {
	m, c := newTestRun(t, evening(t), engine.Options{CountIn: 5 * time.Second}, s)
	const byHand = 106 * time.Second
	if at > byHand {
		m = c.at(m, byHand)
	} else {
		m = c.at(m, at)
	}
	for keys == skipToEnd && m.run.View().Phase != engine.Over {
		m = press(m, "right")
	}
	for _, k := range keys {
		m = press(m, string(k))
	}
	return c.at(m, at)
}

// golden holds text against a file.
func golden(t *testing.T, file, text string) {
	t.Helper()
	if *update {
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(want) != text {
		t.Errorf("%s differs; got\n%s", file, text)
	}
}

// fits fails where a frame has a line wider than the window, or too many.
func fits(t rapid.TB, frame string, width, height int) {
	t.Helper()
	lines := strings.Split(frame, "\n")
	if len(lines) > height {
		t.Errorf("%d lines in a window of %d", len(lines), height)
	}
	for i, l := range lines {
		if w := ansi.StringWidth(l); w > width {
			t.Errorf("line %d is %d wide in a window of %d: %q", i+1, w, width, ansi.Strip(l))
		}
	}
}

// picture draws a frame.
func picture(t *testing.T, file, frame string, width, height int) {
	t.Helper()
	e := vt.NewEmulator(width, height)
	if _, err := e.WriteString(strings.ReplaceAll(frame, "\n", "\r\n")); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte(termshot.SVG(e, true)), 0o644); err != nil {
		t.Fatal(err)
	}
}

// lean is a font of a console as most systems load it: half cells and several
// shapes are lacking, and others look alike.
var lean = safetext.Repertoire{'█': 1, '░': 2, '─': 3, '│': 4, '║': 4, '↑': 5, '▲': 5, '↓': 6, '▼': 6, '←': 7, '→': 8, '•': 9, '■': 10, '♦': 11, '×': 12}

// TestFontOfTheConsole: what is shown is what the font has, in figures of whole
// cells, and the phases are told apart.
func TestFontOfTheConsole(t *testing.T) {
	for _, mo := range moments {
		for _, size := range sizes {
			s := testStyle(termenv.ANSI, glyph.Full)
			s.show(lean)
			frame := ansi.Strip(momentOf(t, mo.at, mo.keys, s).resized(size.width, size.height).View())
			for _, r := range frame {
				if r >= 0x80 && !lean.Has(string(r)) {
					t.Fatalf("%s: %c is not in the font:\n%s", mo.name, r, frame)
				}
			}
			if strings.Contains(frame, "???") {
				t.Errorf("%s: something is not shown:\n%s", mo.name, frame)
			}
			if mo.name == "rest" && size.width == 80 && (!strings.Contains(frame, "██") || !strings.Contains(frame, "o o o") || !strings.Contains(frame, "──█")) {
				t.Errorf("figures, signs or strip are drawn with something else:\n%s", frame)
			}
		}
	}
}

// TestSignsAreOfOneAlphabet: a font that has every shape shows them.
func TestSignsAreOfOneAlphabet(t *testing.T) {
	s := testStyle(termenv.ANSI, glyph.Half)
	own := s.sign(palette.Rest)
	s.show(lean)
	if got := s.sign(palette.Rest); own != "•" || got != "o" {
		t.Errorf("a rest is %s, and with a lean font %s", own, got)
	}
}

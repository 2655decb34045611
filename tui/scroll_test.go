package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/journal"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/internal/today"
	"coldfloor/internal/units"
	"coldfloor/tui/glyph"
)

// longQuestion is a question whose text has more lines than a low window.
func longQuestion() question {
	q := question{title: "Long", answers: []answer{newAnswer(quitAsked{}, "leave", "q")}}
	for i := range 30 {
		q.text = append(q.text, fmt.Sprintf("Sentence %02d.", i))
	}
	q.strong = len(q.text) - 3 // no blank line between, except before the last ones
	return q
}

// Text that is higher than the window says at its ends how much more there is,
// as the list of sessions does, and no line of it is passed over by moving down a
// line or a screenful at a time.
func TestLongTextSaysWhatIsOutOfSight(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	for _, height := range []int{6, 12, 24} {
		for _, k := range []string{"down", "pgdown", " "} {
			q, seen := longQuestion(), map[string]bool{}
			all := len(q.lines(40))
			for range all {
				lines := strings.Split(q.View(s, 40, height), "\n")
				text := lines[1 : 1+q.room(height)]
				above, below, here := 0, 0, 0
				fmt.Sscanf(text[0], "  ↑ %d more above", &above)
				fmt.Sscanf(text[len(text)-1], "  ↓ %d more below", &below)
				for _, l := range text {
					if strings.HasPrefix(l, " Sentence") {
						here++
						seen[strings.TrimSpace(l)] = true
					}
				}
				if above+here+below != len(q.text) {
					t.Fatalf("%d above, %d seen, %d below of %d:\n%s", above, here, below, len(q.text), strings.Join(lines, "\n"))
				}
				q, _ = q.Update(keyMsg(k), s, 40, height)
			}
			for _, sentence := range q.text {
				if !seen[sentence] {
					t.Errorf("%q is never seen by %q in %d lines", sentence, k, height)
				}
			}
		}
	}
}

// In a low window the answers follow the text, and a sign says that there is more
// of both, until all of it has been seen.
func TestAnswersInALowWindow(t *testing.T) {
	for _, code := range text.Codes() {
		l := text.In(code)
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = l
		for _, height := range []int{4, 5, 6} {
			q := questionOf(&run.Ask{Title: l.Flow.FirstSession, Text: l.Cautions(), Answers: []run.Answer{
				{Key: "enter", Label: l.Flow.Read, Enter: true}, {Key: "q", Label: l.Flow.Leave, Leave: true}}})
			seen := ""
			for range 100 {
				view := q.View(s, 20, height)
				fits(t, view, 20, height)
				seen += strings.NewReplacer("\n", " ", "…", "").Replace(view) + " "
				if strings.Contains(view, "q: "+l.Flow.Leave) {
					break
				}
				if lines := strings.Split(view, "\n"); !strings.HasPrefix(lines[len(lines)-1], "  ↓ ") {
					t.Fatalf("%s: nothing says that there is more below\n%s", code, view)
				}
				q, _ = q.Update(keyMsg("down"), s, 20, height)
			}
			seen = strings.Join(strings.Fields(seen), " ")
			for _, want := range append(strings.Fields(strings.Join(l.Cautions(), " ")), l.Keys.Enter+":", "q: "+l.Flow.Leave) {
				if len(want) < 19 && !strings.Contains(seen, want) {
					t.Errorf("%s: %q is never seen in %d lines", code, want, height)
				}
			}
		}
	}
}

// After the window has grown a key moves the text at once, from where it is seen.
func TestMovesFromWhereItIsSeen(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	q := longQuestion()
	for range 50 {
		q, _ = q.Update(keyMsg("down"), s, 40, 6)
	}
	before := q.View(s, 80, 24)
	q, _ = q.Update(keyMsg("up"), s, 80, 24)
	if after := q.View(s, 80, 24); after == before {
		t.Errorf("a key up does not move it:\n%s", after)
	}
}

// In the smallest window the day says at once what is today's, with its dose, and
// each answer is whole, in every language.
func TestTodayInTheSmallestWindow(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	for _, code := range text.Codes() {
		l := text.In(code)
		s.lang = l
		for _, c := range []struct{ date, says string }{{"2026-12-07", l.Sheet.FootContacts(10, true)}, {"2026-12-08", l.Day.Nothing}} {
			date, err := units.ParseDate(c.date)
			if err != nil {
				t.Fatal(err)
			}
			q := questionOfToday(today.On(winter(t), nil, date, 48*time.Hour), l, true)
			view := q.View(s, 40, 12)
			if !strings.Contains(view, c.says) {
				t.Errorf("%s of %s lacks %q:\n%s", code, c.date, c.says, view)
			}
			for _, a := range q.answers {
				if !strings.Contains(view, a.Help().Desc) {
					t.Errorf("%s of %s cuts %q:\n%s", code, c.date, a.Help().Desc, view)
				}
			}
		}
	}
}

// The names of the columns stand above what they name.
func TestColumnsStandBelowTheirNames(t *testing.T) {
	for _, size := range sizes {
		m := chooseScreen{style: testStyle(termenv.Ascii, glyph.Quadrant), width: size.width}
		c := m.columns(nil)
		head, row := m.row("  ", c), m.row("> ", c)
		lines := strings.Split(chooseScreen{style: m.style, width: size.width, height: size.height}.View(), "\n")
		if lines[1] != head || head[2:] != row[2:] {
			t.Errorf("at %d cells the names stand\n%s, the rows\n%s", size.width, lines[1], row)
		}
	}
}

// In a narrow window what is answered is seen beside what is asked.
func TestAnswersOfTheFormInANarrowWindow(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		m := newFinishScreen(nil, nil, "done", s).resized(20, 5)
		for _, step := range []struct{ keys, want string }{{"7", "7  " + s.lang.Form.RPE[7][:3]}, {"!" + s.lang.Form.Yes[:1], " " + s.lang.Form.Yes}, {"!left", "left"}} {
			for _, k := range typedOf(step.keys) {
				m, _ = m.Update(k)
			}
			if view := ansi.Strip(m.View()); !strings.Contains(view, step.want) {
				t.Errorf("%s: after %q %q is not on\n%s", code, step.keys, step.want, view)
			}
		}
	}
}

// A form with more lines than the window says how many there are above and
// below, and always shows the line at the cursor.
func TestNoLineOfTheFormIsHiddenWithoutASign(t *testing.T) {
	var blocks []journal.PlannedBlock
	for i := range 8 {
		blocks = append(blocks, journal.PlannedBlock{Title: fmt.Sprintf("Block %d", i), Rounds: 3})
	}
	for _, height := range []int{12, 13, 16, 24} {
		m := newFinishScreen(blocks, make([]int, len(blocks)), "done", testStyle(termenv.Ascii, glyph.Quadrant)).resized(40, height)
		m.pain = yes // no line is blank
		for at := range len(m.entries()) {
			m.at = at
			view, listed, counted := m.View(), 0, 0
			for _, e := range m.entries() {
				if strings.Contains(view, "  "+e.label) || strings.Contains(view, "> "+e.label) {
					listed++
				}
			}
			for _, l := range strings.Split(view, "\n") {
				var hidden int
				if _, err := fmt.Sscanf(strings.TrimLeft(l, " ↑↓"), "%d more", &hidden); err == nil {
					counted += hidden
				}
			}
			if listed+counted != len(m.entries()) || !strings.Contains(view, "> "+m.entries()[at].label) {
				t.Errorf("%d listed and %d counted of %d, cursor at %d, in %d lines:\n%s", listed, counted, len(m.entries()), at, height, view)
			}
			for _, l := range strings.Split(view, "\n") {
				if ansi.StringWidth(l) > 40 {
					t.Errorf("%q is too wide", l)
				}
			}
		}
	}
}

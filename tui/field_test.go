package tui

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// counts are one of each kind of thing that is counted.
func counts(t *testing.T) map[string]scene {
	t.Helper()
	scenes := map[string]scene{}
	for _, mo := range moments {
		m := momentOf(t, mo.at, mo.keys, testStyle(termenv.Ascii, glyph.Quadrant))
		scenes[mo.name] = sceneOf(m.style.lang, m.run.Plan(), m.run.View(), m.run.Options)
	}
	return scenes
}

// eachField calls do with the field of every kind of moment at many sizes.
func eachField(t *testing.T, do func(name string, f frame, rows int)) {
	scenes := counts(t)
	for _, set := range []glyph.Set{glyph.Plain, glyph.Half, glyph.Quadrant, glyph.Sextant} {
		s := testStyle(termenv.Ascii, set)
		for width := MinWidth; width <= 200; width += 23 {
			for rows := 3; rows <= 40; rows += 1 + rows/6 {
				for name, sc := range scenes {
					f := frame{scene: sc, width: width, height: 60, style: s}
					do(fmt.Sprintf("%s, set %d, %d×%d", name, set, width, rows), f, rows)
				}
			}
		}
	}
}

// TestFieldKeepsOffItsEdges: the field is as wide and as high as it has to be;
// between what is counted and the banner above, the task below and the ground
// around a figure that is cut out, there is a blank row as soon as there are
// seven, and a bar at the side is a figure's width away.
func TestFieldKeepsOffItsEdges(t *testing.T) {
	eachField(t, func(name string, f frame, rows int) {
		lines := f.counted(rows)
		font, large := f.timeFont(rows)
		if !large {
			return
		}
		if len(lines) != rows {
			t.Fatalf("%s: %d lines", name, len(lines))
		}
		digit, _ := font.Size("0")
		for i, l := range lines {
			if ansi.StringWidth(l) != f.inner() {
				t.Fatalf("%s: line %d is %d wide, want %d", name, i, ansi.StringWidth(l), f.inner())
			}
			if rows >= 7 && (i == 0 || i == rows-1) && strings.Contains(l, string(glyphChar(f.style.set))) {
				t.Errorf("%s: ink at the edge\n%s", name, strings.Join(lines, "\n"))
			}
			left, right := len(l)-len(strings.TrimLeft(l, " ")), len(l)-len(strings.TrimRight(l, " "))
			if side := f.side(); strings.TrimSpace(l) != "" && (side == plan.Left && left < digit || side == plan.Right && right < digit) {
				t.Errorf("%s: %d and %d cells off the bars, a figure is %d\n%s", name, left, right, digit, strings.Join(lines, "\n"))
			}
		}
	})
}

// glyphChar is the character of a whole lit cell.
func glyphChar(set glyph.Set) rune {
	if set == glyph.Plain {
		return '#'
	}
	return '█'
}

// TestRepIsLargest: nothing beside what is counted is as high as it.
func TestRepIsLargest(t *testing.T) {
	eachField(t, func(name string, f frame, rows int) {
		l := f.lay(rows)
		if f.scene.phase == palette.Paused || !l.large {
			return
		}
		for _, side := range l.side {
			if side.large && side.font.Height() >= l.font.Height() {
				t.Errorf("%s: %q is %.1f rows high, the figure %.1f", name, side.text, side.font.Height(), l.font.Height())
			}
		}
	})
}

// TestRepsAreCounted reads the scene of the test session at moments that were
// worked out by hand: twenty hops of half a second from 5 s on, five squats a
// side of 3-1-1 from 25 s, six push-ups of two seconds from 94 s that wait for
// a key.
func TestRepsAreCounted(t *testing.T) {
	for _, c := range []struct {
		at     time.Duration
		figure string
		beside string
		dose   string
	}{
		{5 * time.Second, "1", "0:10 of 20", ""},
		{7*time.Second + 499*time.Millisecond, "5", "0:08 of 20", ""},
		{14*time.Second + 900*time.Millisecond, "20", "0:01 of 20", ""},
		{25 * time.Second, "1", "down 3 0:25 of 5", "left side"},
		{28 * time.Second, "1", "hold 1 0:22 of 5", "left side"},
		{29*time.Second + 500*time.Millisecond, "1", "up 1 0:21 of 5", "left side"},
		{34*time.Second + 900*time.Millisecond, "2", "up 1 0:16 of 5", "left side"},
		{54 * time.Second, "1", "down 3 0:25 of 5", "right side"},
	} {
		m, _ := screenAt(t, c.at)
		s := sceneOf(m.style.lang, m.run.Plan(), m.run.View(), m.run.Options)
		var texts []string
		for _, b := range s.count.beside {
			texts = append(texts, b.text)
		}
		if got := strings.Join(texts, " "); s.count.figure != c.figure || got != c.beside || s.dose != c.dose {
			t.Errorf("at %v %q, %q, %q; want %q, %q, %q", c.at, s.count.figure, got, s.dose, c.figure, c.beside, c.dose)
		}
	}
}

// TestByHandIsAnEstimate: the count goes up by the pace, says that it is about
// so many, and never counts more than were asked for.
func TestByHandIsAnEstimate(t *testing.T) {
	for _, c := range []struct{ worked, figure, time string }{
		{"1s", "1", "0:01 of 0:12"}, {"5s", "3", "0:05 of 0:12"}, {"20s", "6", "0:20 of 0:12"},
	} {
		worked, err := time.ParseDuration(c.worked)
		if err != nil {
			t.Fatal(err)
		}
		m, clock := screenAt(t, 0)
		for m.run.Plan().Steps[m.run.View().Step].Name != "Push-up" {
			m = press(m, "right")
		}
		for m.run.View().CountIn > 0 {
			m = clock.at(m, clock.now+100*time.Millisecond)
		}
		from := m.run.View().Elapsed
		m = clock.at(m, clock.now+worked-from)
		s := sceneOf(m.style.lang, m.run.Plan(), m.run.View(), m.run.Options)
		if s.count.before != "about" || s.count.figure != c.figure || s.count.beside[0].text != c.time || s.count.beside[1].text != "of 6" {
			t.Errorf("after %v: %+v", c.worked, s.count)
		}
	}
}

// TestMarksDoNotMakeANameSmall: a name with accents and signs is drawn large as
// soon as the same name without them is; what is never drawn large is not
// outshone by its dose or by what follows.
func TestMarksDoNotMakeANameSmall(t *testing.T) {
	for _, size := range sizes[1:] {
		for _, at := range []time.Duration{2 * time.Second, 7 * time.Second} {
			for name, large := range map[string]bool{"Hop": true, "Höp": true, "Żółć 90°": true, "跳箱": false, "قفز": false} {
				p := evening(t)
				p.Session.Blocks[0].Exercises[0].Name = name
				m, c := newTestRun(t, p, engine.Options{}, testStyle(termenv.Ascii, glyph.Quadrant))
				view := c.at(m, at).resized(size.width, size.height).View()
				if asText := strings.Contains(view, name) || strings.Contains(view, "跳 箱"); asText == large {
					t.Errorf("%s at %v in %d×%d:\n%s", name, at, size.width, size.height, view)
				}
				if !large && at < 5*time.Second && !strings.Contains(view, "20 reps") {
					t.Errorf("the dose outshines %s in %d×%d:\n%s", name, size.width, size.height, view)
				}
			}
		}
	}
}

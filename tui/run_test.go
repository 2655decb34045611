package tui

import (
	"strings"
	"testing"
	"time"
	"unicode"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"
	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions/sessionstest"
	"coldfloor/tui/glyph"
)

// The steps of the test session: 0 lead-in, 1 pogo hops, 2 change, 3 split
// squat left, 4 switch, 5 right, 6 change, 7 push-ups by hand, 8 rest.
const (
	stepHops   = 1
	stepChange = 2
	stepLeft   = 3
	stepByHand = 7
	stepRest   = 8
)

// screenAt returns the test session at a time.
func screenAt(t *testing.T, now time.Duration) (runScreen, *handClock) {
	t.Helper()
	m, c := newTestRun(t, evening(t), engine.Options{CountIn: 5 * time.Second}, testStyle(termenv.Ascii, glyph.Quadrant))
	return c.at(m, now), c
}

// A machine that was away pauses the session where it was, and says so.
func TestAwaySaysSo(t *testing.T) {
	m, c := screenAt(t, 7*time.Second)
	c.now += 42 * time.Second
	m = m.look()
	if v := m.run.View(); v.Phase != engine.Halted || v.Clock != 7*time.Second {
		t.Errorf("%+v", v)
	}
	if want := "the machine stood still for 42 s; paused where you left off; p to resume"; !strings.Contains(m.View(), want) {
		t.Errorf("does not say %q:\n%s", want, m.View())
	}
	c.now += time.Minute / 2
	if m = c.at(m, c.now+15*time.Second); !strings.Contains(m.View(), "still for 42 s") {
		t.Error("no longer says so while it is paused")
	}
	if m = press(m, "p"); strings.Contains(m.View(), "stood still") {
		t.Error("still says so")
	}
}

func TestStopAsksOnce(t *testing.T) {
	m, _ := screenAt(t, 35*time.Second)
	if m = press(m, "q", "x"); m.run.View().Phase != engine.Running || m.run.View().Step != stepLeft || m.asking {
		t.Error("another key did not just go on")
	}
	for _, k := range []string{"q", "y", "ctrl+c"} {
		m, _ := screenAt(t, 35*time.Second)
		m, cmd := press(m, "q").Update(keyMsg(k))
		if m.run.View().Phase != engine.Over {
			t.Errorf("q and %s did not stop", k)
		}
		if _, ok := cmd().(runEnded); !ok {
			t.Errorf("q and %s: %T", k, cmd())
		}
	}
}

// The question whether to stop is asked as large over the list of keys, which is
// there again afterwards.
func TestStopIsAskedOverTheKeys(t *testing.T) {
	s := testStyle(termenv.Ascii, glyph.Quadrant)
	if got, want := momentOf(t, 35*time.Second, "?q", s).View(), momentOf(t, 35*time.Second, "q", s).View(); got != want {
		t.Errorf("it is asked on\n%s", got)
	}
	if m := momentOf(t, 35*time.Second, "?qx", s); !strings.Contains(m.View(), s.lang.Screen.HelpBack) {
		t.Errorf("the keys are gone:\n%s", m.View())
	}
}

// To the question whether to stop a player may say yes in their own language.
func TestStopByYes(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		m := momentOf(t, 35*time.Second, "q"+s.lang.Form.Yes[:1], s)
		if m.run.View().Phase != engine.Over {
			t.Errorf("%s: %q does not stop", code, s.lang.Form.Yes[:1])
		}
	}
}

func TestNoticeGoesByItself(t *testing.T) {
	m, c := screenAt(t, 35*time.Second)
	m = press(m, "m")
	if m = c.at(m, 35*time.Second+noticeTime-time.Second); !strings.Contains(m.View(), "sound off") {
		t.Error("gone early")
	}
	if m = c.at(m, 38*time.Second+noticeTime); m.notice != "" {
		t.Errorf("%q stays", m.notice)
	}
}

// The screen wakes at every change of the figures and at every boundary, and
// otherwise often enough to see that the machine was away.
func TestWakesInTime(t *testing.T) {
	for _, c := range []struct{ now, want time.Duration }{
		{5 * time.Second, 500 * time.Millisecond}, // a rep lasts half a second
		{5*time.Second + 900*time.Millisecond, 100 * time.Millisecond},
		{14*time.Second + 800*time.Millisecond, 200 * time.Millisecond},
		{17 * time.Second, look},
		{107 * time.Second, look},
	} {
		m, _ := screenAt(t, c.now)
		if got, ok := m.wait(); got != c.want || !ok {
			t.Errorf("at %v it waits %v, %v, want %v", c.now, got, ok, c.want)
		}
	}
	m, _ := screenAt(t, 7*time.Second)
	if _, ok := press(m, "p").wait(); ok {
		t.Error("it wakes in a pause, in which nothing changes")
	}
}

// Between two wakes nothing on the screen changes, and at most wakes something
// does.
func TestChangesOnlyWhenItWakes(t *testing.T) {
	m, c := screenAt(t, 0)
	wakes, idle := 0, 0
	for c.now < 126*time.Second {
		before := m.View()
		wait, ok := m.wait()
		if !ok {
			t.Fatalf("at %v it does not wake again", c.now)
		}
		next := c.now + wait
		c.now = next - time.Millisecond
		if m = m.look(); m.View() != before {
			t.Fatalf("changed before it woke at %v", next)
		}
		c.now = next
		m = m.look()
		if wakes++; m.View() == before {
			idle++
		}
	}
	if wakes > 180 || idle > wakes/10 {
		t.Errorf("%d wakes, %d of them for nothing", wakes, idle)
	}
}

// The end of a session is shown until a key, or for a while; what ends the last
// set does not end it as well. A player who stopped need not be shown it.
func TestEndIsSeen(t *testing.T) {
	ended := func(cmd tea.Cmd) bool {
		if cmd == nil {
			return false
		}
		_, ok := cmd().(runEnded)
		return ok
	}
	end := func() (runScreen, *handClock) {
		m, c := screenAt(t, 7*time.Second)
		for m.run.View().Phase != engine.Over {
			m = press(m, "right")
		}
		return m, c
	}
	m, c := end()
	if view := m.View(); !strings.Contains(view, "DONE") || !strings.Contains(view, "any key goes on") {
		t.Errorf("the end is not shown:\n%s", view)
	}
	if _, cmd := m.Update(keyMsg(" ")); ended(cmd) {
		t.Error("the second half of a double slap leaves the screen")
	}
	c.now += time.Second
	m, cmd := m.Update(keyMsg(" "))
	if !ended(cmd) {
		t.Error("a key does not leave it")
	}
	if _, cmd := m.Update(keyMsg(" ")); cmd != nil {
		t.Error("it is left twice")
	}
	m, _ = end()
	if _, cmd := m.Update(runTicked{m.turn}); !ended(cmd) {
		t.Error("it is not left by itself")
	}
}

// A tick that a key has overtaken starts no second chain of ticks.
func TestOneChainOfTicks(t *testing.T) {
	m, _ := screenAt(t, 7*time.Second)
	old := m.turn
	m = press(m, "+")
	if _, cmd := m.Update(runTicked{old}); cmd != nil {
		t.Error("an old tick is answered")
	}
	if _, cmd := m.Update(runTicked{m.turn}); cmd == nil {
		t.Error("the present tick is not answered")
	}
}

func TestReadableFrom(t *testing.T) {
	for _, c := range []struct {
		cell          float64
		width, height int
		want          string
	}{
		{0, 80, 24, "cell_height in the settings"},
		{4, 80, 24, "easily read from 4m"},
		{2.6, 80, 24, "easily read from 4m"}, // by dropping what is secondary
		{1.65, 80, 24, "legible"},
		{1, 40, 12, "too small"},
	} {
		m, _ := screenAt(t, 7*time.Second)
		m.reading = Reading{From: 4 * units.Metre, Cell: c.cell}
		if m = m.resized(c.width, c.height); !strings.Contains(m.notice, c.want) {
			t.Errorf("cell %v mm, %d×%d: %q, want %q", c.cell, c.width, c.height, m.notice, c.want)
		}
		fits(t, m.View(), c.width, c.height)
	}
}

// No line is wider than the window and there are never more than its height,
// whatever a session file holds and however the window is resized.
func TestNoFrameOverflows(t *testing.T) {
	text := rapid.OneOf(rapid.String(), rapid.StringOf(rapid.Rune()), rapid.SampledFrom([]string{
		"宇宙飛行士のスクワット", "تمرين القفز", "e\u0301\u0302\u0303\u0304\u0305", "👩‍🚀 jump", "a\u202eb", "\x1b[2J", "\u200b", "Pogo hops",
		"Donaudampfschifffahrtsgesellschaftskapitänskniebeugenreihe", ""}))
	rapid.Check(t, func(rt *rapid.T) {
		p := plan.Of(sessionstest.Draw(rt))
		for i := range p.Session.Blocks {
			b := &p.Session.Blocks[i]
			b.Title = text.Draw(rt, "title")
			for j := range b.Exercises {
				e := &b.Exercises[j]
				e.Name, e.How, e.Easier.Name = text.Draw(rt, "name"), text.Draw(rt, "how"), text.Draw(rt, "easier")
				e.Cues = []string{text.Draw(rt, "cue")}
			}
		}
		set := rapid.SampledFrom([]glyph.Set{glyph.Plain, glyph.Half, glyph.Quadrant, glyph.Sextant}).Draw(rt, "set")
		profile := rapid.SampledFrom([]termenv.Profile{termenv.Ascii, termenv.ANSI, termenv.TrueColor}).Draw(rt, "profile")
		m, c := newTestRun(t, p, engine.Options{CountIn: 3 * time.Second}, testStyle(profile, set))
		for range 4 {
			m = c.at(m, c.now+time.Duration(rapid.IntRange(0, 100_000).Draw(rt, "ms"))*time.Millisecond)
			m = press(m, rapid.SampledFrom([]string{"p", "q", "?", "e", "right", "left", "+", " "}).Draw(rt, "key"))
			w, h := rapid.IntRange(1, 300).Draw(rt, "width"), rapid.IntRange(1, 90).Draw(rt, "height")
			m = m.resized(w, h)
			frame := m.View()
			fits(rt, frame, w, h)
			if s := ansi.Strip(frame); strings.ContainsFunc(s, func(r rune) bool { return r != '\n' && unicode.IsControl(r) || r == '\u202e' }) {
				rt.Errorf("raw text on the screen: %q", s)
			}
			if set == glyph.Plain && strings.ContainsFunc(frame, func(r rune) bool { return r >= 0x80 }) {
				rt.Errorf("more than ASCII: %q", frame)
			}
		}
	})
}

package tui

import (
	"coldfloor/internal/text"
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
	"coldfloor/internal/units"
	"coldfloor/sessions/sessionstest"
	"coldfloor/tui/glyph"
)

// keyTypes are the keys that are no letter, by the names the tests use.
var keyTypes = map[string]tea.KeyType{
	" ": tea.KeySpace, "enter": tea.KeyEnter, "pgdown": tea.KeyPgDown, "left": tea.KeyLeft, "right": tea.KeyRight,
	"up": tea.KeyUp, "down": tea.KeyDown, "esc": tea.KeyEsc, "ctrl+c": tea.KeyCtrlC, "ctrl+z": tea.KeyCtrlZ, "tab": tea.KeyTab,
	"shift+tab": tea.KeyShiftTab, "ctrl+s": tea.KeyCtrlS, "backspace": tea.KeyBackspace, "f5": tea.KeyF5,
}

// keyMsg returns the message for a key.
func keyMsg(k string) tea.KeyMsg {
	if typ, ok := keyTypes[k]; ok {
		msg := tea.KeyMsg{Type: typ}
		if k == " " {
			msg.Runes = []rune(" ")
		}
		return msg
	}
	return tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune(k)}
}

// press presses one key after the other.
func press(m runScreen, keys ...string) runScreen {
	for _, k := range keys {
		m, _ = m.Update(keyMsg(k))
	}
	return m
}

// at returns what the engine is doing, and the step it is at.
func at(m runScreen) (engine.Phase, int) {
	v := m.run.View()
	return v.Phase, v.Step
}

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

func TestEveryKey(t *testing.T) {
	const working = 35 * time.Second // split squat, left
	for _, c := range []struct {
		key   string
		phase engine.Phase
		step  int
		foot  string
	}{
		{" ", engine.Running, stepLeft + 1, ""},
		{"enter", engine.Running, stepLeft + 1, ""},
		{"pgdown", engine.Running, stepLeft + 1, ""},
		{"x", engine.Running, stepLeft + 1, ""},
		{"f5", engine.Running, stepLeft + 1, ""},
		{"p", engine.Halted, stepLeft, "paused"},
		{"+", engine.Running, stepLeft, "15 s more"},
		{"=", engine.Running, stepLeft, "15 s more"},
		{"left", engine.Running, stepChange, ""},
		{"r", engine.CountedIn, stepLeft, ""},
		{"right", engine.Running, stepLeft + 1, ""},
		{"e", engine.Running, stepLeft, "easier variant"},
		{"m", engine.Running, stepLeft, "sound off"},
		{"up", engine.Running, stepLeft, "volume 10 %"},
		{"down", engine.Running, stepLeft, "volume 0 %"},
		{"q", engine.Running, stepLeft, "Stop?"},
		{"esc", engine.Running, stepLeft, "Stop?"},
		{"ctrl+c", engine.Running, stepLeft, "Stop?"},
		{"?", engine.Running, stepLeft, "repeat the set"},
	} {
		m, _ := screenAt(t, working)
		m = press(m, c.key)
		phase, step := at(m)
		if phase != c.phase || step != c.step || !strings.Contains(m.View(), c.foot) {
			t.Errorf("%q: %s at step %d, want %s at %d and %q on\n%s", c.key, phase, step, c.phase, c.step, c.foot, m.View())
		}
	}
}

// Every binding does something that TestEveryKey presses, and has help.
func TestEveryBindingIsTested(t *testing.T) {
	tested := " enter pgdown p + = left r right e m up down q esc ctrl+c ?"
	for _, column := range newRunKeys(&text.English.Keys).FullHelp() {
		for _, b := range column {
			if b.Help().Key == "" || b.Help().Desc == "" {
				t.Errorf("%v has no help", b.Keys())
			}
			for _, k := range b.Keys() {
				if !strings.Contains(tested, k) {
					t.Errorf("%q is not tested", k)
				}
			}
		}
	}
}

func TestSlapNeverEatsARest(t *testing.T) {
	m, c := screenAt(t, 106*time.Second)
	if _, step := at(m); step != stepByHand {
		t.Fatalf("at step %d", step)
	}
	m = press(m, " ", " ", "x", "enter")
	if _, step := at(m); step != stepRest {
		t.Errorf("at step %d after slaps, want the rest", step)
	}
	m, _ = m.Update(tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft})
	if _, step := at(c.at(m, c.now+time.Second)); step != stepRest {
		t.Errorf("a click ended the rest")
	}
}

// A second slap right at the start of a set, after no switch or change, is
// the first one's echo.
func TestSecondSlapInASetThatJustBegan(t *testing.T) {
	m, c := screenAt(t, 5*time.Second+300*time.Millisecond)
	if m = press(m, " "); m.run.View().Step != stepHops {
		t.Error("a slap 0.3 s into a set ended it")
	}
	m = press(c.at(m, 6*time.Second), " ")
	if m.run.View().Step != stepChange {
		t.Error("a slap 1 s into a set did not end it")
	}
}

func TestMouse(t *testing.T) {
	for _, c := range []struct {
		msg  tea.MouseMsg
		ends bool
	}{
		{tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonLeft}, true},
		{tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonRight}, true},
		{tea.MouseMsg{Action: tea.MouseActionRelease, Button: tea.MouseButtonLeft}, false},
		{tea.MouseMsg{Action: tea.MouseActionMotion}, false},
		{tea.MouseMsg{Action: tea.MouseActionPress, Button: tea.MouseButtonWheelDown}, false},
	} {
		m, _ := screenAt(t, 7*time.Second)
		m, _ = m.Update(c.msg)
		if _, step := at(m); (step == stepChange) != c.ends {
			t.Errorf("%v: at step %d", c.msg, step)
		}
	}
}

func TestPasteIsNoKey(t *testing.T) {
	m, _ := screenAt(t, 7*time.Second)
	m, _ = m.Update(tea.KeyMsg{Type: tea.KeyRunes, Runes: []rune("qq"), Paste: true})
	if phase, step := at(m); phase != engine.Running || step != stepHops || m.asking {
		t.Error("pasted text acted")
	}
}

func TestPauseByKeyAndOn(t *testing.T) {
	m, c := screenAt(t, 7*time.Second)
	m = c.at(press(m, "p"), 60*time.Second)
	if v := m.run.View(); v.Phase != engine.Halted || v.Clock != 7*time.Second {
		t.Fatalf("%+v", v)
	}
	if m = press(m, "x"); !m.paused() {
		t.Error("any key ended the pause; only the keys meant for it may")
	}
	for _, k := range []string{"p", " "} {
		if on := press(m, k); on.paused() {
			t.Errorf("%q did not go on", k)
		}
		press(m, "p")
	}
}

// A machine that was away pauses the session where it was, and says so.
func TestAwaySaysSo(t *testing.T) {
	m, c := screenAt(t, 7*time.Second)
	c.now += 42 * time.Second
	m = m.look()
	if v := m.run.View(); v.Phase != engine.Halted || v.Clock != 7*time.Second {
		t.Errorf("%+v", v)
	}
	if want := "the machine was away 42 s; paused where you left off; p to resume"; !strings.Contains(m.View(), want) {
		t.Errorf("does not say %q:\n%s", want, m.View())
	}
	c.now += time.Minute / 2
	if m = c.at(m, c.now+15*time.Second); !strings.Contains(m.View(), "away 42 s") {
		t.Error("no longer says so while it is paused")
	}
	if m = press(m, "p"); strings.Contains(m.View(), "away") {
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

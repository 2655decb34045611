package tui

import (
	"strings"
	"testing"
	"time"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/engine"
	"coldfloor/internal/run"
	"coldfloor/internal/text"
	"coldfloor/sound/live"
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
		{"p", engine.Halted, stepLeft, "p resume  ? keys"},
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

// TestTurnsAwayPaused: a player who turns to the shell has paused, and goes on when
// they say so.
func TestTurnsAwayPaused(t *testing.T) {
	m, c := screenAt(t, 7*time.Second)
	for range 2 {
		m, _ = m.turnAway()
		if m = c.at(m, 8*time.Second); !m.paused() || m.run.View().Clock != 7*time.Second {
			t.Fatalf("%+v", m.run.View())
		}
	}
}

// TestVolumeTurnsSoundOn: a volume is never shown while nothing is to be heard.
func TestVolumeTurnsSoundOn(t *testing.T) {
	for _, code := range text.Codes() {
		for key, percent := range map[string]int{"up": 10, "down": 0} {
			s := testStyle(termenv.Ascii, glyph.Quadrant)
			s.lang = text.In(code)
			m := press(momentOf(t, 35*time.Second, "m", s), key)
			if !strings.Contains(m.View(), s.lang.Screen.Volume(percent)) || m.run.Muted() {
				t.Errorf("%s, %s: muted %v on\n%s", code, key, m.run.Muted(), m.View())
			}
		}
	}
}

// TestBellHasNoVolume: where the terminal's bell stands in for the sound no volume
// is shown.
func TestBellHasNoVolume(t *testing.T) {
	t.Setenv("SSH_CONNECTION", "of a test")
	p := newProgram(t, run.Options{Plan: evening(t), Device: &live.Options{Bell: func() {}}})
	p.keys("up")
	if view := p.app.View(); strings.Contains(view, text.English.Screen.Volume(10)) || !strings.Contains(view, text.English.Screen.BellVolume) {
		t.Errorf("it shows\n%s", view)
	}
}

// TestHelpIsAlwaysOffered: the key that lists the others is at the foot of the
// narrowest window in every language, beside the sign that the bell stands in.
func TestHelpIsAlwaysOffered(t *testing.T) {
	for _, code := range text.Codes() {
		s := testStyle(termenv.Ascii, glyph.Quadrant)
		s.lang = text.In(code)
		m, c := newTestRun(t, evening(t), engine.Options{}, s)
		m = m.resized(40, 12)
		for ; !m.over(); m = c.at(m, c.now+5*time.Second) {
			v := m.run.View()
			for _, sign := range []string{"", s.lang.Screen.BellOnly + "  ", s.lang.Screen.Muted + "  "} {
				line := m.shortHelp(v, 40-ansi.StringWidth(sign))
				if !strings.Contains(line, "? "+s.lang.Keys.Help) || ansi.StringWidth(sign+line) > 40 {
					t.Fatalf("%s: %q", code, sign+line)
				}
			}
			if v.Phase == engine.Overtime {
				m.run.Do(engine.Finish)
			}
		}
	}
}

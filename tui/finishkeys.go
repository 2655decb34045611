package tui

import (
	"coldfloor/internal/text"

	"github.com/charmbracelet/bubbles/key"
)

// formKeys are the keys of the form.
type formKeys struct {
	Up, Next, Less, More, Done, Leave key.Binding

	Yes, No, Change key.Binding // of the pain
	Save            key.Binding // Next, at the last line
}

// newFormKeys returns the bindings. Yes and no are answered by their first
// letters.
func newFormKeys(t *text.Keys, f *text.Form) formKeys {
	yes, no := f.Yes[:1], f.No[:1]
	bind := func(name, help string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, help))
	}
	return formKeys{
		Up:    bind("↑", t.Up, "up", "shift+tab"),
		Next:  bind(t.Enter, t.NextField, "down", "tab", "enter"),
		Less:  bind("←", t.Less, "left", "-"),
		More:  bind("→", t.Greater, "right", "+"),
		Done:  bind("ctrl+s", t.Save, "ctrl+s"),
		Leave: bind(t.Escape, t.Save, "esc", "ctrl+c"),

		Yes:    bind(yes, f.Yes, yes),
		No:     bind(no, f.No, no),
		Change: bind("← →", t.Change, "left", "right"),
		Save:   bind(t.Enter, t.Save, "enter"),
	}
}

// at returns the bindings for the foot of the screen while the cursor is at a
// line.
func (k formKeys) at(line int) []key.Binding {
	switch line {
	case linePain:
		return []key.Binding{k.Next, k.Leave, k.Yes, k.No, k.Change, k.Up}
	case lineWhere, lineNote:
		return []key.Binding{k.Next, k.Leave, k.Up}
	case lineSave:
		return []key.Binding{k.Save, k.Leave, k.Up}
	}
	return []key.Binding{k.Next, k.Leave, k.Less, k.More, k.Up}
}

package tui

import (
	"coldfloor/internal/text"

	"github.com/charmbracelet/bubbles/key"
)

// formKeys are the keys of the form.
type formKeys struct {
	Up, Next, Less, More, Done, Leave key.Binding
}

func newFormKeys(t *text.Keys) formKeys {
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
	}
}

// ShortHelp returns the bindings for the foot of the screen.
func (k formKeys) ShortHelp() []key.Binding {
	return []key.Binding{k.Next, k.Less, k.More, k.Leave}
}

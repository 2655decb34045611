package tui

import (
	"strings"

	"github.com/charmbracelet/bubbles/key"
	tea "github.com/charmbracelet/bubbletea"

	"coldfloor/internal/text"
)

// runKeys are the keys of the running screen. Every other key, and a click of
// the mouse, ends the set in hand, so that a slap anywhere will do.
type runKeys struct {
	Finish, Pause, More, Back, Repeat, Skip, Easier, Mute, Louder, Softer, Stop, Help key.Binding
}

// newRunKeys returns the bindings. Each help text is the one that the help on
// the screen shows.
func newRunKeys(t *text.Keys) runKeys {
	bind := func(name, help string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, help))
	}
	return runKeys{
		Finish: bind(t.Finish, t.EndSet, " ", "enter", "pgdown"),
		Pause:  bind("p", t.Pause, "p"),
		More:   bind("+", t.More, "+", "="),
		Back:   bind("←", t.Back, "left"),
		Repeat: bind("r", t.Repeat, "r"),
		Skip:   bind("→", t.Skip, "right"),
		Easier: bind("e", t.Easier, "e"),
		Mute:   bind("m", t.Mute, "m"),
		Louder: bind("↑", t.Louder, "up"),
		Softer: bind("↓", t.Softer, "down"),
		Stop:   bind("q", t.Stop, "q", "esc", "ctrl+c"),
		Help:   bind("?", t.Help, "?"),
	}
}

// ShortHelp returns the bindings worth a place at the foot of the screen, the
// one that leads to all the others early enough to find room in any window.
func (k runKeys) ShortHelp() []key.Binding {
	return []key.Binding{k.Finish, k.Pause, k.Help, k.Stop, k.More, k.Back, k.Skip, k.Easier}
}

// FullHelp returns every binding.
func (k runKeys) FullHelp() [][]key.Binding {
	return [][]key.Binding{
		{k.Finish, k.Pause, k.More, k.Back, k.Repeat, k.Skip},
		{k.Easier, k.Mute, k.Louder, k.Softer, k.Stop, k.Help},
	}
}

// small returns a key with its letter in lower case. The large letters on the
// screen are capitals, and Caps Lock may be on.
func small(k tea.KeyMsg) tea.KeyMsg {
	if k.Type != tea.KeyRunes {
		return k
	}
	k.Runes = []rune(strings.ToLower(string(k.Runes)))
	return k
}

// listKeys are the keys of the screen to choose from.
type listKeys struct {
	Up, Down, Choose, Stop key.Binding
}

func newListKeys(t *text.Keys) listKeys {
	return listKeys{
		Up:     key.NewBinding(key.WithKeys("up", "k"), key.WithHelp("↑", t.Up)),
		Down:   key.NewBinding(key.WithKeys("down", "j"), key.WithHelp("↓", t.Down)),
		Choose: key.NewBinding(key.WithKeys("enter", " "), key.WithHelp(t.Enter, t.Choose)),
		Stop:   key.NewBinding(key.WithKeys("q", "esc", "ctrl+c"), key.WithHelp("q", t.Leave)),
	}
}

// ShortHelp returns the bindings for the foot of the screen, those first that
// nobody would guess.
func (k listKeys) ShortHelp() []key.Binding {
	return []key.Binding{k.Choose, k.Stop, k.Up, k.Down}
}

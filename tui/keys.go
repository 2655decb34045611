package tui

import (
	"github.com/charmbracelet/bubbles/key"
)

// runKeys are the keys of the running screen. Every other key, and a click of
// the mouse, ends the set in hand, so that a slap anywhere will do.
type runKeys struct {
	Finish, Pause, More, Back, Repeat, Skip, Easier, Mute, Louder, Softer, Stop, Help key.Binding
}

// newRunKeys returns the bindings. Each help text is the one that the help on
// the screen shows.
func newRunKeys() runKeys {
	bind := func(name, help string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, help))
	}
	return runKeys{
		Finish: bind("space", "end set", " ", "enter", "pgdown"),
		Pause:  bind("p", "pause", "p"),
		More:   bind("+", "15 s more", "+", "="),
		Back:   bind("←", "back", "left"),
		Repeat: bind("r", "repeat the set", "r"),
		Skip:   bind("→", "skip", "right"),
		Easier: bind("e", "easier", "e"),
		Mute:   bind("m", "mute", "m"),
		Louder: bind("↑", "louder", "up"),
		Softer: bind("↓", "softer", "down"),
		Stop:   bind("q", "stop", "q", "esc", "ctrl+c"),
		Help:   bind("?", "keys", "?"),
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

// listKeys are the keys of the screen to choose from.
type listKeys struct {
	Up, Down, Choose, Stop key.Binding
}

func newListKeys() listKeys {
	return listKeys{
		Up:     key.NewBinding(key.WithKeys("up", "k"), key.WithHelp("↑", "up")),
		Down:   key.NewBinding(key.WithKeys("down", "j"), key.WithHelp("↓", "down")),
		Choose: key.NewBinding(key.WithKeys("enter", " "), key.WithHelp("enter", "choose")),
		Stop:   key.NewBinding(key.WithKeys("q", "esc", "ctrl+c"), key.WithHelp("q", "leave")),
	}
}

// ShortHelp returns the bindings for the foot of the screen.
func (k listKeys) ShortHelp() []key.Binding {
	return []key.Binding{k.Up, k.Down, k.Choose, k.Stop}
}

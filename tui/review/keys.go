package review

import "github.com/charmbracelet/bubbles/key"

// keys are the keys of all screens; each screen has some of them.
type keys struct {
	Up, Down, PageUp, PageDown, Top, Bottom key.Binding
	Left, Right                             key.Binding
	Open, Back                              key.Binding
	Sort, Reverse                           key.Binding
	Help, Quit                              key.Binding
}

// newKeys returns the bindings. Each help text is the one that the help on the
// screen shows.
func newKeys() keys {
	bind := func(name, help string, keys ...string) key.Binding {
		return key.NewBinding(key.WithKeys(keys...), key.WithHelp(name, help))
	}
	return keys{
		Up:       bind("↑", "up", "up", "k"),
		Down:     bind("↓", "down", "down", "j"),
		PageUp:   bind("page up", "a page up", "pgup", "b"),
		PageDown: bind("page down", "a page down", "pgdown", " "),
		Top:      bind("home", "to the top", "home", "g"),
		Bottom:   bind("end", "to the end", "end", "G"),
		Left:     bind("←", "the view before", "left", "shift+tab", "h"),
		Right:    bind("→", "next view", "right", "tab", "l"),
		Open:     bind("enter", "open", "enter"),
		Back:     bind("esc", "back", "esc", "backspace"),
		Sort:     bind("s", "sort", "s"),
		Reverse:  bind("r", "reverse", "r"),
		Help:     bind("?", "keys", "?"),
		Quit:     bind("q", "leave", "q", "ctrl+c"),
	}
}

// of returns the bindings of a screen, those worth a place at its foot first.
func (k keys) of(s screen) []key.Binding {
	moves := []key.Binding{k.PageUp, k.PageDown, k.Top, k.Bottom}
	switch s {
	case onSquad:
		return append([]key.Binding{k.Open, k.Help, k.Quit, k.Sort, k.Reverse, k.Down, k.Up}, moves...)
	case onSession:
		k.Left.SetHelp("←", "to the left")
		k.Right.SetHelp("→", "to the right")
		return append([]key.Binding{k.Back, k.Help, k.Quit, k.Down, k.Up, k.Right, k.Left}, moves...)
	}
	return append([]key.Binding{k.Right, k.Help, k.Quit, k.Open, k.Back, k.Down, k.Up, k.Left}, moves...)
}

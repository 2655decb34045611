package onscreen

import "strings"

// kind is what matters of a terminal to whoever writes on it.
type kind struct {
	able    bool // it repeats a character when it is told to, and erases in the ground's colour
	console bool // it is the Linux console; see onConsole
}

// kindOf returns the kind of the terminal that the environment names.
func kindOf(getenv func(string) string) kind {
	return kind{able(getenv), getenv("TERM") == "linux"}
}

// able reports whether the terminal that the environment names repeats a
// character when it is told to, and erases in the colour of the ground that it
// writes on: the capabilities rep and bce of terminfo. Where that is not sure it
// is asked for neither.
func able(getenv func(string) string) bool {
	term, _, _ := strings.Cut(getenv("TERM"), "-")
	switch term {
	case "xterm":
		return getenv("TERM_PROGRAM") != "Apple_Terminal"
	case "tmux", "foot", "st", "konsole", "alacritty", "wezterm", "ghostty", "vte":
		return true
	case "screen":
		return getenv("TMUX") != "" // tmux by its older name
	}
	return false
}

package onscreen

import "strings"

// kind is what matters of a terminal to whoever writes on it.
type kind struct {
	able    bool // it erases in the ground's colour
	console bool // it is the Linux console; see onConsole
}

// repeats is which characters a terminal repeats when it is told to (REP of
// ECMA-48). Its name does not tell: many call themselves xterm, and some of those
// repeat nothing, others ASCII alone. So it is asked, and told to repeat nothing
// before it has answered.
type repeats struct {
	ascii, others bool
}

// kindOf returns the kind of the terminal that the environment names.
func kindOf(getenv func(string) string) kind {
	return kind{able(getenv), getenv("TERM") == "linux"}
}

// able reports whether the terminal that the environment names erases in the colour
// of the ground that it writes on: the capability bce of terminfo. Where that is
// not sure it is not made to.
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

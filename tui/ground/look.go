package ground

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// settled is whether somebody said what the background is, or the terminal has no
// answer, so that it is not asked.
var settled bool

// Look returns the renderer of the terminal of standard output. Background is
// "light", "dark", or anything else to ask the terminal, unless it is the Linux
// console, which never answers; what its environment tells in COLORFGBG holds until
// it has answered. getenv is os.Getenv or like it.
func Look(background string, getenv func(string) string) *lipgloss.Renderer {
	r := lipgloss.DefaultRenderer()
	if r.ColorProfile() == termenv.Ascii && getenv("NO_COLOR") == "" && getenv("CLICOLOR") != "0" {
		r.SetColorProfile(colours(getenv("TERM"), getenv("TMUX") != ""))
	}
	if settled = background == "light" || background == "dark"; settled {
		r.SetHasDarkBackground(background == "dark")
	}
	if getenv("TERM") == "linux" { // an old kernel's console writes the question on the screen
		settled = true
	}
	return r
}

// colours returns how many colours a terminal has that neither its name nor
// COLORTERM tells of (from memory of the terminals' own documentation). One that
// is not known has none.
func colours(term string, tmux bool) termenv.Profile {
	name, _, _ := strings.Cut(term, "-")
	switch name {
	case "foot", "konsole", "st", "tmux", "alacritty", "wezterm", "contour", "vte", "mintty":
		return termenv.ANSI256
	case "screen":
		if tmux { // by its older name; it makes 16 of 256 colours where its own terminal has no more
			return termenv.ANSI256
		}
		return termenv.ANSI
	case "rxvt", "mlterm", "putty", "eterm", "Eterm", "xterm", "linux", "cygwin", "iterm", "vscode":
		return termenv.ANSI
	}
	return termenv.Ascii
}

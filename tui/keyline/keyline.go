// Package keyline is the line at the foot of a screen that names its keys.
package keyline

import (
	"slices"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/bubbles/key"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
)

// Fit returns as many of the keys, from the first on, as find room whole in
// width cells, and how many that are. An ellipsis stands for those that do not,
// unless it would cost a key and one of those shown lists them all.
func Fit(h help.Model, keys []key.Binding, width int) (line string, shown int) {
	h.Width = 0 // no limit
	sign := h.Styles.Ellipsis.Inline(true).Render(" " + safetext.Ellipsis)
	for n := len(keys); n > 0; n-- {
		line := h.ShortHelpView(keys[:n])
		switch w := ansi.StringWidth(line); {
		case n == len(keys) && w <= width:
			return line, n
		case w+ansi.StringWidth(sign) <= width:
			return line + sign, n
		case w <= width && slices.ContainsFunc(keys[:n], ListsAll):
			return line, n
		}
	}
	return "", 0
}

// ListsAll reports whether a key lists all the others.
func ListsAll(b key.Binding) bool { return slices.Contains(b.Keys(), "?") }

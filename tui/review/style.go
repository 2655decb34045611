package review

import (
	"strings"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// style is how everything looks on one terminal.
type style struct {
	set           glyph.Set
	shown         safetext.Repertoire
	plain, strong lipgloss.Style
	quiet, pain   lipgloss.Style
	marked        lipgloss.Style // a figure to look at
	first, second lipgloss.Style // of a chart's series
}

func newStyle(r *lipgloss.Renderer, set glyph.Set, font safetext.Repertoire) style {
	p := palette.New(r)
	return style{set: set, shown: repertoire(set, font), plain: p.Plain(), strong: p.Strong(), quiet: p.Muted(), pain: p.Strong().Reverse(true), marked: p.Strong().Reverse(true),
		first: p.Text(palette.Rest), second: p.Text(palette.Work)}
}

// repertoire returns the characters that a terminal with a font shows, nil where
// they are not known.
func repertoire(set glyph.Set, font safetext.Repertoire) safetext.Repertoire {
	switch {
	case set == glyph.Plain:
		return safetext.Repertoire{}
	case font != nil:
		return font
	case set < glyph.Quadrant:
		return safetext.Console
	}
	return nil
}

// signs returns the first row of signs of which the terminal shows all; the last
// row is ASCII.
func (s style) signs(rows ...string) []rune {
	for _, r := range rows {
		if s.shown.Has(r) {
			return []rune(r)
		}
	}
	return []rune(rows[len(rows)-1])
}

// fine reports whether the terminal shows characters of dots and of eighths.
func (s style) fine() bool { return s.shown == nil }

// help returns the model that draws help from key bindings.
func (s style) help() help.Model {
	h := help.New()
	h.ShortSeparator, h.FullSeparator = "  ", "    "
	h.Ellipsis = safetext.Ellipsis
	h.Styles = help.Styles{Ellipsis: s.quiet, ShortKey: s.strong, ShortDesc: s.quiet, ShortSeparator: s.quiet,
		FullKey: s.strong, FullDesc: s.plain, FullSeparator: s.plain}
	return h
}

// frame returns the lines as one picture that fits into the window, in
// characters that the terminal can show.
func (s style) frame(lines []string, width, height int) string {
	fitted := make([]string, 0, height)
	for _, l := range lines[:min(len(lines), height)] {
		fitted = append(fitted, ansi.Truncate(l, width, safetext.Ellipsis))
	}
	return s.shown.Show(strings.Join(fitted, "\n"))
}

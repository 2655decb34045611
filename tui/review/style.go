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
	plain, strong lipgloss.Style
	quiet, pain   lipgloss.Style
	marked        lipgloss.Style // a figure to look at
	first, second lipgloss.Style // of a chart's series
}

func newStyle(r *lipgloss.Renderer, set glyph.Set) style {
	p := palette.New(r)
	return style{set: set, plain: p.Plain(), strong: p.Strong(), quiet: p.Muted(), pain: p.Strong().Reverse(true), marked: p.Strong().Reverse(true),
		first: p.Text(palette.Rest), second: p.Text(palette.Work)}
}

// ascii reports whether nothing but ASCII can be shown.
func (s style) ascii() bool { return s.set == glyph.Plain }

// fine reports whether the terminal shows characters of dots and of eighths.
func (s style) fine() bool { return s.set != glyph.Plain && s.set != glyph.Half }

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
	text := strings.Join(fitted, "\n")
	switch s.set {
	case glyph.Plain:
		return safetext.ASCII(text)
	case glyph.Half:
		return safetext.Console(text)
	}
	return text
}

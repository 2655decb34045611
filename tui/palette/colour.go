package palette

import "github.com/charmbracelet/lipgloss"

// The colours are those of Okabe and Ito's set for all kinds of colour vision
// ("Color Universal Design", 2002), each lightened for dark backgrounds and
// darkened for light ones, at its own hue, until the contrast suffices on the
// backgrounds in common use. The last of each row is for terminals of 16
// colours, whose owner chose the tints: there light backgrounds leave three
// colours that are dark enough.
var (
	orange = adaptive("#e69f00", "214", "11", "#9d6200", "94", "1")
	blue   = adaptive("#56b4e9", "74", "14", "#0076a8", "24", "4")
	purple = adaptive("#cd7aa8", "175", "13", "#a45482", "96", "5")
	green  = adaptive("#1ca87c", "36", "10", "#007f56", "22", "0")
	yellow = adaptive("#f0e442", "184", "15", "#737300", "58", "0")
	grey   = adaptive("#a0a0a0", "247", "7", "#6f6f6f", "242", "0")
	// ink is for text laid on any of them.
	ink = adaptive("#000000", "16", "0", "#ffffff", "231", "15")
	// white is for text laid on those that a console makes too dark for black.
	white = adaptive("#ffffff", "231", "15", "#ffffff", "231", "15")
)

// adaptive returns a colour for dark and for light backgrounds, each for
// terminals of 16 million, 256 and 16 colours.
func adaptive(dark, dark256, dark16, light, light256, light16 string) lipgloss.CompleteAdaptiveColor {
	return lipgloss.CompleteAdaptiveColor{
		Dark:  lipgloss.CompleteColor{TrueColor: dark, ANSI256: dark256, ANSI: dark16},
		Light: lipgloss.CompleteColor{TrueColor: light, ANSI256: light256, ANSI: light16},
	}
}

// Palette makes the styles of a terminal. What the terminal cannot show, or
// NO_COLOR forbids, its renderer leaves out.
type Palette struct {
	r    *lipgloss.Renderer
	dull bool
}

// New returns the palette of a renderer's terminal. Nil stands for the
// terminal of standard output.
func New(r *lipgloss.Renderer) Palette {
	if r == nil {
		r = lipgloss.DefaultRenderer()
	}
	return Palette{r: r}
}

// Dull returns the palette for a terminal whose grounds are never bright, as
// those of the Linux console: what is asked for is drawn in the darker colour of
// the same name, and orange and purple are too dark then for black text.
func (p Palette) Dull() Palette {
	p.dull = true
	return p
}

// Text is for figures and words of a phase on the terminal's background.
func (p Palette) Text(ph Phase) lipgloss.Style { return p.r.NewStyle().Foreground(ph.Look().Colour) }

// Fill is for text on an area in the phase's colour.
func (p Palette) Fill(ph Phase) lipgloss.Style {
	text := ink
	if c := ph.Look().Colour; p.dull && (c == orange || c == purple) {
		text = white
	}
	return p.r.NewStyle().Foreground(text).Background(ph.Look().Colour)
}

// Plain is for text in the terminal's own colour.
func (p Palette) Plain() lipgloss.Style { return p.r.NewStyle() }

// Strong is for what matters most among plain text.
func (p Palette) Strong() lipgloss.Style { return p.r.NewStyle().Bold(true) }

// Muted is for what can be done without.
func (p Palette) Muted() lipgloss.Style { return p.r.NewStyle().Foreground(grey) }

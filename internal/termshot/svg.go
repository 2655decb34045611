// Package termshot takes pictures of a terminal program: it runs the program
// in a terminal of its own and draws the screen as an SVG.
package termshot

import (
	"fmt"
	"html"
	"image/color"
	"strings"

	"github.com/charmbracelet/x/vt"
)

// The size of a cell in the picture, in its units; text stands on a line
// baseline below the cell's top.
const (
	cellWidth  = 8
	cellHeight = 16
	baseline   = 12.5
	fontSize   = 13.3
)

// Colours of a terminal's ground and ink.
const (
	darkGround, darkInk   = "#101418", "#d8dce0"
	lightGround, lightInk = "#ffffff", "#20242a"
)

// SVG draws the screen as it stands, on a dark ground or a light one. Block
// characters are drawn as shapes, so that no font leaves gaps between them.
func SVG(e *vt.Emulator, dark bool) string {
	w, h := e.Width(), e.Height()
	p := picture{ground: lightGround, ink: lightInk}
	if dark {
		p.ground, p.ink = darkGround, darkInk
	}
	fmt.Fprintf(&p, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d">`+"\n",
		w*cellWidth, h*cellHeight, w*cellWidth, h*cellHeight)
	fmt.Fprintf(&p, `<rect width="100%%" height="100%%" fill="%s"/>`+"\n", p.ground)
	fmt.Fprintf(&p, `<g font-family="DejaVu Sans Mono, Menlo, Consolas, monospace" font-size="%v" xml:space="preserve" shape-rendering="crispEdges">`+"\n", fontSize)
	for y := range h {
		p.row(e, y, w)
	}
	p.WriteString("</g>\n</svg>\n")
	return p.String()
}

// picture is an SVG in the making.
type picture struct {
	strings.Builder
	ground, ink string
}

// row draws one line of the screen.
func (p *picture) row(e *vt.Emulator, y, w int) {
	for x := 0; x < w; {
		c := e.CellAt(x, y)
		n := 1
		for x+n < w && alike(e, x, x+n, y) {
			n++
		}
		if c != nil {
			p.run(e, x, y, n)
		}
		x += n
	}
}

// Attributes of a cell, as bits, as charmbracelet/ultraviolet numbers them.
const (
	bold    = 1 << 0
	reverse = 1 << 5
)

// alike reports whether two cells of a line look the same, whatever their text.
func alike(e *vt.Emulator, x1, x2, y int) bool {
	a, b := e.CellAt(x1, y), e.CellAt(x2, y)
	if a == nil || b == nil {
		return a == b
	}
	return a.Style.Equal(&b.Style)
}

// run draws n cells of one look.
func (p *picture) run(e *vt.Emulator, x, y, n int) {
	st := e.CellAt(x, y).Style
	fg, bg := hexOr(st.Fg, p.ink), hexOr(st.Bg, p.ground)
	if st.Attrs&reverse != 0 {
		fg, bg = bg, fg
	}
	if bg != p.ground {
		p.rect(float64(x*cellWidth), float64(y*cellHeight), float64(n*cellWidth), cellHeight, bg, 1)
	}
	word := word{picture: p, y: y, fill: fg, bold: st.Attrs&bold != 0}
	for i := range n {
		c := e.CellAt(x+i, y)
		if c == nil || c.Content == "" || c.Content == " " {
			word.end()
			continue
		}
		r := []rune(c.Content)
		lit, block := blocks[r[0]]
		shade, shaded := shades[r[0]]
		switch {
		case block:
			word.end()
			p.block(x+i, y, lit, fg)
		case shaded:
			word.end()
			p.rect(float64((x+i)*cellWidth), float64(y*cellHeight), cellWidth, cellHeight, fg, shade)
		default:
			word.add(x+i, c.Content)
		}
	}
	word.end()
}

// word is text that is drawn as one, for not every viewer places each letter.
type word struct {
	picture *picture
	x, y    int
	fill    string
	bold    bool
	text    string
}

func (w *word) add(x int, text string) {
	if w.text == "" {
		w.x = x
	}
	w.text += text
}

func (w *word) end() {
	if w.text == "" {
		return
	}
	weight := ""
	if w.bold {
		weight = ` font-weight="bold"`
	}
	fmt.Fprintf(w.picture, `<text x="%d" y="%v" fill="%s"%s>%s</text>`+"\n", w.x*cellWidth,
		float64(w.y*cellHeight)+baseline, w.fill, weight, html.EscapeString(w.text))
	w.text = ""
}

// block draws the lit quarters of a cell.
func (p *picture) block(x, y, lit int, fill string) {
	const w, h = cellWidth / 2.0, cellHeight / 2.0
	left, top := float64(x*cellWidth), float64(y*cellHeight)
	for row := range 2 {
		switch lit >> (2 * row) & 3 {
		case 1:
			p.rect(left, top+float64(row)*h, w, h, fill, 1)
		case 2:
			p.rect(left+w, top+float64(row)*h, w, h, fill, 1)
		case 3:
			p.rect(left, top+float64(row)*h, 2*w, h, fill, 1)
		}
	}
}

// rect draws a rectangle.
func (p *picture) rect(x, y, w, h float64, fill string, opacity float64) {
	see := ""
	if opacity < 1 {
		see = fmt.Sprintf(` fill-opacity="%v"`, opacity)
	}
	fmt.Fprintf(p, `<rect x="%v" y="%v" width="%v" height="%v" fill="%s"%s/>`+"\n", x, y, w, h, fill, see)
}

// hexOr returns a colour as #rrggbb, or the default for none.
func hexOr(c color.Color, none string) string {
	if c == nil {
		return none
	}
	r, g, b, _ := c.RGBA()
	return fmt.Sprintf("#%02x%02x%02x", r>>8, g>>8, b>>8)
}

// blocks holds the block characters as lit quarters: bit 0 upper left, 1 upper
// right, 2 lower left, 3 lower right.
var blocks = map[rune]int{
	'▘': 1, '▝': 2, '▀': 3, '▖': 4, '▌': 5, '▞': 6, '▛': 7, '▗': 8, '▚': 9, '▐': 10, '▜': 11, '▄': 12, '▙': 13, '▟': 14, '█': 15,
}

// shades holds the shaded blocks by how much of the ground they cover.
var shades = map[rune]float64{'░': 0.25, '▒': 0.5, '▓': 0.75}

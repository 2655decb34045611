// Package glyph draws large figures, capital letters, signs and shapes in
// terminal cells, to be read from across a room.
//
// There is one hand-drawn family. Each glyph is a few bars, bowls and slants
// laid on the grid of pixels that a set of block characters gives, with
// strokes of whole pixels, so that it is sharp and even at every size. All
// figures are equally wide: a clock does not shift while it counts.
package glyph

import (
	"math"
	"strings"
)

// Font is the family at one size, for one set of characters.
type Font struct {
	set    Set
	width  int // of a figure, in pixels
	height int // of every glyph, in pixels
	stem   int // thickness of an upright stroke, in pixels
	bar    int // thickness of a level stroke, in pixels
	gap    int // between two glyphs, in pixels
}

// Proportions of the family, in shares of the height as seen.
const (
	normal    = 0.62 // width of a figure
	narrow    = 0.42 // the same where there is little width
	stroke    = 0.15 // thickness of a stroke, between the 1:6 and 1:8 commonly asked of signs (from memory)
	minHeight = 5    // in pixels; fewer cannot hold the three bars of an 8
	minWidth  = 3    // in pixels
)

// Choose returns the largest font in which text fits into cols × rows cells,
// marks included; rows need not be whole. ok is false where even the smallest does not fit, or text has
// a character that the family lacks. The same font can then draw other text of
// the kind, so that a clock keeps its size while it counts.
func Choose(text string, cols int, rows float64, set Set) (f Font, ok bool) {
	_, down := set.parts()
	return choose(text, cols, int(rows*float64(down)), set)
}

// spacious is the height in cells from which on a whole row is left blank above
// and below a figure.
const spacious = 7

// Inset is like Choose for a figure in the middle of a panel of rows lines: it
// leaves a row above and below it blank, or a pixel where there are few rows.
func Inset(text string, cols, rows int, set Set) (f Font, ok bool) {
	_, down := set.parts()
	blank := 1
	if rows >= spacious {
		blank = down
	}
	return choose(text, cols, rows*down-2*blank, set)
}

// choose returns the largest font in which text fits into so many columns of
// cells and rows of pixels.
func choose(text string, cols, pixels int, set Set) (f Font, ok bool) {
	chars, ok := parse(text)
	if !ok {
		return Font{}, false
	}
	across, down := set.parts()
	for h := pixels; h >= minHeight; h-- {
		if over, under := (Font{height: h}).bars(set).markSize(chars); over+h+under > pixels {
			continue
		}
		if f, ok := fitWidth(chars, h, cols*across, set); ok && (!f.heavy() || h%down == 0) {
			return f, true
		}
	}
	return Font{}, false
}

// fitWidth returns the widest font of the given height, up to the normal
// width, in which the characters take at most room pixels; a little narrower if
// heavy strokes stand in whole cells then.
func fitWidth(chars []char, height, room int, set Set) (font Font, ok bool) {
	pw, ph := set.pixel()
	seen := float64(height) * ph
	least := max(minWidth, int(math.Ceil(narrow*seen/pw)))
	for w := max(least, int(math.Round(normal*seen/pw))); w >= least; w-- {
		f := Font{width: w, height: height}.bars(set)
		switch {
		case f.measure(chars) > room:
		case !ok && !f.heavy(), f.heavy() && f.stands():
			return f, true
		case !ok:
			font, ok = f, true
		}
	}
	return font, ok
}

// bars returns the font with the strokes that belong to its size in a set.
// Level strokes round down sooner and upright ones leave half the width, so
// that the counters of an 8 stay open.
func (f Font) bars(set Set) Font {
	pw, ph := set.pixel()
	seen := float64(f.height) * ph
	across, down := set.parts()
	f.set = set
	f.bar = whole(max(1, int(math.Round(stroke*seen/ph-0.2))), down, wholeBar)
	f.stem = whole(max(1, min(int(math.Round(stroke*seen/pw)), int(math.Round(0.27*float64(f.width))))), across, wholeStem)
	f.gap = max(1, int(math.Round(float64(f.stem)*0.8)))
	if f.heavy() {
		f.gap -= f.gap % across
	}
	return f
}

// whole makes n pixels the nearest number of whole cells, of so many pixels
// each, if they are at least so many cells: then nobody misses half a cell, and
// edges are sharp.
func whole(n, cell, least int) int {
	if n < least*cell {
		return n
	}
	return (n + cell/2) / cell * cell
}

// The least thickness of a stroke that is made whole cells, in cells.
const (
	wholeStem = 3
	wholeBar  = 2
)

// heavy reports whether upright strokes are whole cells.
func (f Font) heavy() bool {
	across, _ := f.set.parts()
	return f.stem >= wholeStem*across
}

// stands reports whether upright strokes that are whole cells stand in them, at
// the edges of a figure and in the middle.
func (f Font) stands() bool {
	across, down := f.set.parts()
	return (f.width-f.stem)%(2*across) == 0 && f.height%down == 0
}

// Height returns the height of the figures in cells, which need not be whole.
func (f Font) Height() float64 {
	_, down := f.set.parts()
	return float64(f.height) / float64(down)
}

// Size returns how many cells text takes, with the marks on its letters.
func (f Font) Size(text string) (cols, rows int) {
	across, down := f.set.parts()
	chars, _ := parse(text)
	over, under := f.markSize(chars)
	return (f.measure(chars) + across - 1) / across, (over + f.height + under + down - 1) / down
}

// measure returns the width of characters in pixels.
func (f Font) measure(chars []char) int {
	over, under := f.markSize(chars)
	n := 0
	for _, c := range chars {
		n += f.advance(c, max(over, under)) + f.gap
	}
	return max(n-f.gap, 0)
}

// advance returns the width of a character in pixels, without the gap; zone is
// the height of the marks of its line with the blank below them.
func (f Font) advance(c char, zone int) int {
	w := f.width
	if m := masters[c.base]; m.width != nil {
		w = m.width(f)
	}
	if across, _ := f.set.parts(); f.heavy() && f.stands() {
		w += w % across
	}
	for _, m := range []rune{c.over, c.under} {
		if m != 0 {
			w = max(w, f.markWidth(m, w, zone-f.air()))
		}
	}
	return w
}

// Render draws text in the middle of lines exactly cols wide; what does not
// fit is cut off on both sides. Characters that the family lacks are blank.
func (f Font) Render(text string, cols int) []string {
	_, rows := f.Size(text)
	chars, _ := parse(text)
	return f.render(chars, cols, rows, 0)
}

// In draws text in the middle of a panel of cols × rows cells, to the pixel.
// What does not fit is cut off.
func (f Font) In(text string, cols, rows int) []string {
	_, down := f.set.parts()
	chars, _ := parse(text)
	over, under := f.markSize(chars)
	return f.render(chars, cols, rows, floorDiv(rows*down-over-f.height-under, 2))
}

// render draws characters with so many blank rows of pixels above them.
func (f Font) render(chars []char, cols, rows, above int) []string {
	across, down := f.set.parts()
	over, under := f.markSize(chars)
	c := newCanvas(cols*across, rows*down)
	x := floorDiv(cols*across-f.measure(chars), 2)
	if f.heavy() {
		x, above = x-x%across, above-above%down
	}
	for _, ch := range chars {
		x += f.draw(c, ch, x, above+over, max(over, under)) + f.gap
	}
	return c.lines(f.set)
}

// draw draws a character with its left edge at x and its top at y, and returns
// how wide it is.
func (f Font) draw(c *canvas, ch char, x, y, zone int) int {
	whole := f.advance(ch, zone)
	w := f.advance(char{base: ch.base}, 0)
	p := pen{c: c, x: x + (whole-w)/2, y: y, w: w, h: f.height, Font: f}
	if m := masters[ch.base]; m.draw != nil {
		m.draw(p)
	}
	for _, m := range []rune{ch.over, ch.under} {
		if m != 0 {
			p.drawMark(m, zone-f.air())
		}
	}
	return whole
}

// lines packs the pixels into the characters of a set.
func (c *canvas) lines(set Set) []string {
	across, down := set.parts()
	out := make([]string, 0, c.h/down)
	var b strings.Builder
	for y := 0; y < c.h; y += down {
		for x := 0; x < c.w; x += across {
			lit := 0
			for i := range across * down {
				if c.at(x+i%across, y+i/across) {
					lit |= 1 << i
				}
			}
			b.WriteRune(set.char(lit))
		}
		out = append(out, b.String())
		b.Reset()
	}
	return out
}

func floorDiv(a, b int) int { return int(math.Floor(float64(a) / float64(b))) }

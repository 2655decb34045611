// Package glyph draws large figures, capital letters and shapes in terminal
// cells, to be read from across a room.
//
// There is one hand-drawn family. Each glyph is a few bars, bowls and slants
// laid on the grid of pixels that a set of block characters gives, with
// strokes of whole pixels, so that it is sharp and even at every size. All
// figures are equally wide: a clock does not shift while it counts.
package glyph

import (
	"math"
	"strings"
	"unicode"
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

// Choose returns the largest font in which text fits into cols × rows cells.
// ok is false where even the smallest does not fit, or text has a character
// that the family lacks. The same font can then draw other text of the kind,
// so that a clock keeps its size while it counts.
func Choose(text string, cols, rows int, set Set) (f Font, ok bool) {
	if !Has(text) {
		return Font{}, false
	}
	across, down := set.parts()
	for h := rows * down; h >= minHeight; h-- {
		if f, ok := fitWidth(text, h, cols*across, set); ok {
			return f, true
		}
	}
	return Font{}, false
}

// fitWidth returns the widest font of the given height, up to the normal
// width, in which text takes at most room pixels.
func fitWidth(text string, height, room int, set Set) (Font, bool) {
	pw, ph := set.pixel()
	seen := float64(height) * ph
	least := max(minWidth, int(math.Ceil(narrow*seen/pw)))
	for w := max(least, int(math.Round(normal*seen/pw))); w >= least; w-- {
		f := Font{set: set, width: w, height: height}
		// Level strokes round down sooner and upright ones leave half the
		// width, so that the counters of an 8 stay open.
		f.bar = max(1, int(math.Round(stroke*seen/ph-0.2)))
		f.stem = max(1, min(int(math.Round(stroke*seen/pw)), int(math.Round(0.27*float64(w)))))
		f.gap = max(1, int(math.Round(float64(f.stem)*0.8)))
		if f.measure(text) <= room {
			return f, true
		}
	}
	return Font{}, false
}

// Has reports whether the family has every character of text. Small letters
// are drawn as capitals.
func Has(text string) bool {
	for _, r := range text {
		if _, ok := masters[unicode.ToUpper(r)]; !ok {
			return false
		}
	}
	return text != ""
}

// Height returns the height of the figures in cells, which need not be whole.
func (f Font) Height() float64 {
	_, down := f.set.parts()
	return float64(f.height) / float64(down)
}

// Size returns how many cells text takes.
func (f Font) Size(text string) (cols, rows int) {
	across, down := f.set.parts()
	return (f.measure(text) + across - 1) / across, (f.height + down - 1) / down
}

// Size returns how many cells text takes in the largest font in which it fits
// into cols × rows cells, and whether it fits at all.
func Size(text string, cols, rows int, set Set) (w, h int, ok bool) {
	f, ok := Choose(text, cols, rows, set)
	if !ok {
		return 0, 0, false
	}
	w, h = f.Size(text)
	return w, h, true
}

// measure returns the width of text in pixels.
func (f Font) measure(text string) int {
	n := 0
	for _, r := range text {
		n += f.advance(r) + f.gap
	}
	return max(n-f.gap, 0)
}

// advance returns the width of a character in pixels, without the gap.
func (f Font) advance(r rune) int {
	m := masters[unicode.ToUpper(r)]
	if m.width == nil {
		return f.width
	}
	return m.width(f)
}

// Render draws text in the largest font that fits into cols × rows cells, in
// the middle of lines exactly cols wide. There are at most rows lines. ok is
// false, and there are none, where Choose finds no font.
func Render(text string, cols, rows int, set Set) (lines []string, ok bool) {
	f, ok := Choose(text, cols, rows, set)
	if !ok {
		return nil, false
	}
	return f.Render(text, cols), true
}

// Render draws text in the middle of lines exactly cols wide; what does not
// fit is cut off on both sides. Characters that the family lacks are blank.
func (f Font) Render(text string, cols int) []string {
	across, down := f.set.parts()
	_, rows := f.Size(text)
	c := newCanvas(cols*across, rows*down)
	x := floorDiv(cols*across-f.measure(text), 2)
	for _, r := range text {
		m, w := masters[unicode.ToUpper(r)], f.advance(r)
		if m.draw != nil {
			m.draw(pen{c: c, x: x, w: w, h: f.height, Font: f})
		}
		x += w + f.gap
	}
	return c.lines(f.set)
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

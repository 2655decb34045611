package glyph

import "math"

// A diacritical mark is drawn in a box of its own, over or under the box of
// the letter, with a blank row between them.
type diacritic struct {
	under bool
	least int // height below which it cannot be told from another, in pixels
	draw  func(pen)
}

// marks holds the marks of the European Latin alphabets by their combining
// characters (Unicode Standard, Combining Diacritical Marks).
var marks = map[rune]diacritic{
	'\u0300': {least: 2, draw: func(p pen) { p.leg(0, 0, p.w-p.stem, p.h-1) }}, // grave
	'\u0301': {least: 2, draw: func(p pen) { p.leg(p.w-p.stem, 0, 0, p.h-1) }}, // acute
	'\u0302': {least: 2, draw: func(p pen) { // circumflex
		x := (p.w - p.stem) / 2
		p.leg(x, 0, 0, p.h-1)
		p.leg((p.w-p.stem+1)/2, 0, p.w-p.stem, p.h-1)
	}},
	'\u0303': {least: 2, draw: pen.wave},
	'\u0304': {least: 2, draw: func(p pen) { p.rect(0, p.h-p.bar, p.w, p.h) }}, // macron
	'\u0306': {least: 2, draw: func(p pen) { // breve
		p.stems()
		p.rect(0, p.h-p.bar, p.w, p.h)
	}},
	'\u0307': {least: 2, draw: dotted}, // dot
	'\u0308': {least: 2, draw: func(p pen) { // diaeresis
		t := max(p.stem, (p.w-1)/3)
		high := min(p.h, max(1, p.down(t)))
		p.rect(0, p.h-high, t, p.h)
		p.rect(p.w-t, p.h-high, p.w, p.h)
	}},
	'\u030A': {least: 3, draw: func(p pen) { p.bowl(0, 0, p.w, p.h, all) }}, // ring
	'\u030B': {least: 2, draw: func(p pen) { // double acute
		half := max(p.stem, (p.w-1)/2)
		lean := half - p.stem
		if p.h < 3 {
			lean = 0 // two uprights, or it would be a wave
		}
		p.leg(lean, 0, 0, p.h-1)
		p.leg(p.w-half+lean, 0, p.w-half, p.h-1)
	}},
	'\u030C': {least: 2, draw: func(p pen) { p.vee(0, p.w, 0, p.h-1) }},                                                 // caron
	'\u0323': {least: 2, under: true, draw: func(p pen) { dotted(p.sub(0, 0, p.w, max(1, min(p.h, p.down(p.stem))))) }}, // dot below
	'\u0326': {least: 2, under: true, draw: func(p pen) { // comma below
		x := p.centre(p.stem)
		half := (p.h + 1) / 2
		p.rect(x, 0, x+p.stem, half)
		p.leg(x, half-1, max(0, x-p.stem), p.h-1)
	}},
	'\u0327': {least: 2, under: true, draw: func(p pen) { // cedilla
		x, half := p.centre(p.stem), p.h/2
		p.rect(x, 0, p.w, min(p.bar, half))
		p.rect(p.w-p.stem, 0, p.w, p.h-p.bar)
		p.rect(0, p.h-p.bar, max(p.stem+1, p.w-p.stem), p.h)
	}},
	'\u0328': {least: 2, under: true, draw: func(p pen) { // ogonek
		p.rect(0, 0, p.stem, p.h)
		p.rect(0, p.h-p.bar, p.w, p.h)
	}},
}

// ogonek stands at the right foot of its letter; all others in its middle.
const ogonek = '\u0328'

// wave draws the mark of ñ and ã: up on the left, down on the right.
func (p pen) wave() {
	for x := range p.w {
		rise := math.Sin(2 * math.Pi * (float64(x) + 0.5) / float64(p.w))
		y := int(math.Round(float64(p.h-p.bar) / 2 * (1 - rise)))
		p.rect(x, y, x+1, y+p.bar)
	}
}

// dotted draws a dot at the base of the box.
func dotted(p pen) {
	x := p.centre(p.stem)
	p.rect(x, p.h-min(p.h, max(1, p.down(p.stem))), x+p.stem, p.h)
}

// Proportions of a mark, in shares of the height of a letter.
const markHeight = 0.22

// markSize returns the height of the marks of chars, over and under alike, and
// of the blank between a mark and its letter, in pixels; 0 where there are
// none on that side.
func (f Font) markSize(chars []char) (over, under int) {
	least, hasOver, hasUnder := 0, false, false
	for _, c := range chars {
		for _, m := range []rune{c.over, c.under} {
			if m == 0 {
				continue
			}
			least = max(least, marks[m].least)
			hasOver = hasOver || !marks[m].under
			hasUnder = hasUnder || marks[m].under
		}
	}
	high := max(least, int(math.Round(markHeight*float64(f.height)))) + f.air()
	if hasOver {
		over = high
	}
	if hasUnder {
		under = high
	}
	return over, under
}

// air returns the blank between a mark and its letter, in pixels.
func (f Font) air() int { return max(1, f.bar/2) }

// markWidth returns how wide a mark over or under a letter of the given width
// is, where marks are high pixels high; of the letter's parity, so that it
// stands in the middle.
func (f Font) markWidth(m rune, letter, high int) int {
	w := max(minWidth, min(f.width, f.across(high)*5/4))
	switch m {
	case '\u0303': // a wave needs room to turn
		w = max(5, w)
	case '\u030A': // a ring is round
		w = max(minWidth, f.across(high))
	}
	return w + (letter-w)&1
}

// drawMark draws a mark over or under the box of a letter. Its strokes are
// thin enough to leave its shape open.
func (p pen) drawMark(m rune, high int) {
	w := p.markWidth(m, p.w, high)
	x, y := (p.w-w)/2, -high-p.air()
	if marks[m].under {
		y = p.h + p.air()
	}
	if m == ogonek && w < p.w {
		x = p.w - w
	}
	box := p.sub(x, y, x+w, y+high)
	box.stem = max(1, min(p.stem, w/3))
	box.bar = max(1, min(p.bar, (high-1)/2))
	marks[m].draw(box)
}

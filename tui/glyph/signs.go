package glyph

import "math"

// signs stand between and before figures.
var signs = map[rune]master{
	' ': {width: func(f Font) int { return max(1, f.width/2) }},
	':': {width: Font.dot, draw: func(p pen) {
		d := p.dotHeight()
		p.rect(0, p.h/4, p.w, p.h/4+d)
		p.rect(0, p.h-p.h/4-d, p.w, p.h-p.h/4)
	}},
	'.': {width: Font.dot, draw: func(p pen) { p.rect(0, p.h-p.dotHeight(), p.w, p.h) }},
	'!': {width: Font.dot, draw: func(p pen) {
		p.rect(0, p.h-p.dotHeight(), p.w, p.h)
		p.rect(0, 0, p.w, p.h-p.dotHeight()-max(1, p.bar))
	}},
	'\'': {width: Font.dot, draw: func(p pen) { p.rect(0, 0, p.w, max(p.dotHeight(), p.h/4)) }},
	'-':  {width: Font.small, draw: dash},
	'+': {width: Font.small, draw: func(p pen) {
		dash(p)
		x, reach := p.centre(p.stem), max(1, (p.down(p.w)-p.bar)/2)
		p.rect(x, p.middle()-reach, x+p.stem, p.middle()+p.bar+reach)
	}},
	'/': {draw: func(p pen) { t := p.slope(p.w-p.stem, p.h-1); p.slant(p.w-t, 0, 0, p.h-1, t) }},
	'×': {width: Font.even, draw: func(p pen) {
		side := max(2, p.down(p.w))
		side += (p.h - side) % 2
		y := (p.h - side) / 2
		t := p.slope(p.w-p.stem, side-1)
		p.slant(0, y, p.w-t, y+side-1, t)
		p.slant(p.w-t, y, 0, y+side-1, t)
	}},
}

// dot returns the width of a dot, a little more than a stroke.
func (f Font) dot() int { return f.stem }

// dotHeight returns the height that makes a dot square.
func (p pen) dotHeight() int { return max(1, p.down(p.w)) }

// small returns the width of a sign that is narrower than a figure, such that
// a stem stands in its middle.
func (f Font) small() int {
	w := max(minWidth, f.width*3/4)
	if (w-f.stem)%2 != 0 {
		w++
	}
	return w
}

// down returns how many pixels down look as long as n across.
func (f Font) down(n int) int {
	pw, ph := f.set.pixel()
	return int(math.Round(float64(n) * pw / ph))
}

// across returns how many pixels across look as long as n down.
func (f Font) across(n int) int {
	pw, ph := f.set.pixel()
	return int(math.Round(float64(n) * ph / pw))
}

func dash(p pen) { p.rect(0, p.middle(), p.w, p.middle()+p.bar) }

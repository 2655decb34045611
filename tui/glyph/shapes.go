package glyph

import "math"

// shapes are as wide as high and differ in outline, so that each phase of a
// session is known by its shape from across the room, without colour.
var shapes = map[rune]master{
	'■': {width: Font.square, draw: func(p pen) { p.rect(0, 0, p.w, p.h) }},
	'○': {width: Font.square, draw: func(p pen) { p.ellipse() }},
	'↔': {width: func(f Font) int { return 2*f.across(f.height)*3/4 + f.stem }, draw: func(p pen) {
		p.head(p.w/2-p.stem, 0)
		p.head(p.w-p.w/2+p.stem, p.w)
	}},
	'►': {width: Font.square, draw: func(p pen) { p.head(0, p.w) }},
	'▲': {width: Font.square, draw: func(p pen) {
		for y := range p.h {
			half := int(math.Round(float64(y+1) / float64(p.h) * float64(p.w) / 2))
			p.rect(p.w/2-half, y, p.w-p.w/2+half, y+1)
		}
	}},
	'║': {width: Font.square, draw: func(p pen) {
		t := max(1, p.w*3/10)
		p.rect(0, 0, t, p.h)
		p.rect(p.w-t, 0, p.w, p.h)
	}},
	'♦': {width: Font.square, draw: func(p pen) {
		p.wedges(func(y float64) float64 { return 1 - math.Abs(2*y-1) })
	}},
	'√': {width: Font.square, draw: func(p pen) {
		t := max(p.stem, p.w/5)
		low := p.w/3 - t/2
		p.slant(0, p.h*3/5, low, p.h-1, t)
		p.slant(p.w-t, 0, low, p.h-1, t)
	}},
}

// square returns the width that makes a glyph as wide as high.
func (f Font) square() int { return max(minWidth, f.across(f.height)) }

// wedges fills each row around the middle to the share of the width that
// width gives for the row's place, 0 at the top to 1 at the base.
func (p pen) wedges(width func(y float64) float64) {
	for y := range p.h {
		share := width((float64(y) + 0.5) / float64(p.h))
		side := int(math.Round((1 - share) * float64(p.w-1) / 2))
		p.rect(side, y, p.w-side, y+1)
	}
}

// head fills a triangle that stands upright at x and points to tip.
func (p pen) head(x, tip int) {
	for y := range p.h {
		far := 1 - math.Abs(2*(float64(y)+0.5)/float64(p.h)-1)
		to := x + int(math.Round(far*float64(tip-x)))
		p.rect(min(x, to), y, max(x, to), y+1)
	}
}

// ellipse lights a ring two strokes thick.
func (p pen) ellipse() {
	rx, ry := float64(p.w)/2, float64(p.h)/2
	ix, iy := rx-1.3*float64(p.stem), ry-1.3*float64(p.bar)
	for y := range p.h {
		for x := range p.w {
			dx, dy := float64(x)+0.5-rx, float64(y)+0.5-ry
			if (dx/rx)*(dx/rx)+(dy/ry)*(dy/ry) <= 1 && (ix <= 0 || iy <= 0 || (dx/ix)*(dx/ix)+(dy/iy)*(dy/iy) > 1) {
				p.c.set(p.x+x, y, true)
			}
		}
	}
}

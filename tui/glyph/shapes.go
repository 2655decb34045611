package glyph

// shapes are as wide as high and differ in outline, so that each phase of a
// session is known by its shape from across the room, without colour.
var shapes = map[rune]master{
	'■': {width: Font.square, draw: func(p pen) { p.rect(0, 0, p.w, p.h) }},
	'•': {width: Font.square, draw: pen.disc}, // no ring, which beside figures is a nought
	'↑': {width: Font.square, draw: func(p pen) {
		neck := (p.h + 1) / 2
		for y := range neck {
			half := share(p.w, y+1, 2*neck)
			p.rect(p.w/2-half, y, p.w-p.w/2+half, y+1)
		}
		in := max(1, p.w*3/10)
		p.rect(in, neck, p.w-in, p.h)
	}},
	'↔': {width: func(f Font) int { return 2*f.across(f.height)*3/4 + f.stem }, draw: func(p pen) {
		p.head(p.w/2-p.stem, 0)
		p.head(p.w-p.w/2+p.stem, p.w)
	}},
	'►': {width: Font.square, draw: func(p pen) { p.head(0, p.w) }},
	'▲': {width: Font.square, draw: func(p pen) {
		for y := range p.h {
			half := share(p.w, y+1, 2*p.h)
			p.rect(p.w/2-half, y, p.w-p.w/2+half, y+1)
		}
	}},
	'║': {width: Font.square, draw: func(p pen) {
		t := max(1, p.w*2/5) // bolder than a 1
		p.rect(0, 0, t, p.h)
		p.rect(p.w-t, 0, p.w, p.h)
	}},
	'♦': {width: Font.square, draw: func(p pen) {
		for y := range p.h {
			side := share(p.w-1, p.h-p.near(y), 2*p.h)
			p.rect(side, y, p.w-side, y+1)
		}
	}},
	'√': {width: Font.square, draw: func(p pen) {
		bend := p.h * 3 / 5
		t := max(p.w/5, p.slope(p.w*2/3, p.h-1), p.slope(p.w/3, p.h-1-bend))
		low := p.w/3 - t/2
		p.slant(0, bend, low, p.h-1, t)
		p.slant(p.w-t, 0, low, p.h-1, t)
	}},
}

// square returns the width that makes a glyph as wide as high.
func (f Font) square() int { return max(minWidth, f.across(f.height)) }

// near returns how far row y is from the nearer of the top and the base, in
// half pixels from its middle, so that h is the middle of the box.
func (p pen) near(y int) int { return min(2*y+1, 2*(p.h-y)-1) }

// head fills a triangle that stands upright at x and points to tip.
func (p pen) head(x, tip int) {
	for y := range p.h {
		to := x + share(tip-x, p.near(y), p.h)
		p.rect(min(x, to), y, max(x, to), y+1)
	}
}

// disc fills the ellipse that touches all four sides.
func (p pen) disc() {
	rx, ry := float64(p.w)/2, float64(p.h)/2
	for y := range p.h {
		for x := range p.w {
			dx, dy := (float64(x)+0.5)/rx-1, (float64(y)+0.5)/ry-1
			if dx*dx+dy*dy <= 1 {
				p.light(x, y)
			}
		}
	}
}

package glyph

// letters are the capitals, for short words and the names of exercises.
var letters = map[rune]master{
	'A': {draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h+p.bar, top)
		shelf := p.h / 2
		p.rect(0, shelf, p.w, shelf+p.bar)
	}},
	'B': {draw: func(p pen) {
		m := p.middle()
		p.bowl(0, 0, p.w, m+p.bar, right)
		p.bowl(0, m, p.w, p.h, right)
	}},
	'C': {draw: func(p pen) {
		round := all
		if p.w <= 2*p.stem+1 {
			round = left // or its ends would be gone
		}
		p.bowl(0, 0, p.w, p.h, round)
		p.clear(p.w-p.stem, p.bar+p.open(), p.w, p.h-p.bar-p.open())
	}},
	'D': {draw: func(p pen) { p.bowl(0, 0, p.w, p.h, right) }},
	'E': {draw: func(p pen) { p.armed(true) }},
	'F': {draw: func(p pen) { p.armed(false) }},
	'G': {draw: func(p pen) {
		m := p.middle()
		p.bowl(0, 0, p.w, p.h, all)
		p.clear(p.w-p.stem, p.bar+p.open(), p.w, m)
		p.rect(max(p.w/2, p.stem+1), m, p.w, m+p.bar)
		p.rect(p.w-p.stem, m, p.w, m+p.bar+1)
	}},
	'H': {draw: func(p pen) {
		p.stems()
		p.rect(0, p.middle(), p.w, p.middle()+p.bar)
	}},
	'I': {width: func(f Font) int { return f.stem + 2*f.serif() }, draw: func(p pen) {
		x := p.centre(p.stem)
		p.rect(x, 0, x+p.stem, p.h)
		p.rect(0, 0, p.w, p.bar)
		p.rect(0, p.h-p.bar, p.w, p.h)
	}},
	'J': {draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h, base)
		p.clear(0, 0, p.w-p.stem, p.h*3/5)
		p.clear(p.stem, 0, p.w-p.stem, p.h-p.bar)
	}},
	'K': {draw: func(p pen) {
		p.rect(0, 0, p.stem, p.h)
		p.leg(p.w-p.stem, 0, p.stem, p.h/2)
		p.leg(p.stem, (p.h-1)/2, p.w-p.stem, p.h-1)
	}},
	'L': {draw: func(p pen) {
		p.rect(0, 0, p.stem, p.h)
		p.rect(0, p.h-p.bar, p.w, p.h)
	}},
	'M': {width: Font.wide, draw: func(p pen) {
		p.stems()
		half := (p.w - p.stem + 1) / 2
		deep := p.h / 2
		p.leg(0, 0, p.w-p.stem-half, deep)
		p.leg(p.w-p.stem, 0, half, deep)
	}},
	'N': {draw: func(p pen) {
		p.stems()
		p.leg(0, 0, p.w-p.stem, p.h-1)
	}},
	'O': {draw: func(p pen) { p.bowl(0, 0, p.w, p.h, all) }},
	'P': {draw: pee},
	'Q': {draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h, all)
		p.leg(p.w/2, p.h*3/5, p.w-p.stem, p.h-1)
	}},
	'R': {draw: func(p pen) {
		pee(p)
		p.leg(p.w/3, p.middle()+p.bar, p.w-p.stem, p.h-1)
	}},
	'S': {draw: func(p pen) {
		p.eight()
		m := p.middle()
		p.clear(p.w-p.stem, p.bar+p.hook(), p.w, m)
		p.clear(0, m+p.bar, p.stem, p.h-p.bar-p.hook())
	}},
	'T': {draw: func(p pen) {
		x := p.centre(p.stem)
		p.rect(x, 0, x+p.stem, p.h)
		p.rect(0, 0, p.w, p.bar)
	}, width: Font.even},
	'U': {draw: func(p pen) { p.bowl(0, -p.bar, p.w, p.h, base) }},
	'V': {width: Font.even, draw: func(p pen) { p.vee(0, p.w, 0, p.h-1) }},
	'W': {width: Font.wide, draw: func(p pen) {
		p.stems()
		half := (p.w - p.stem + 1) / 2
		high := p.h / 2
		p.leg(p.w-p.stem-half, high, 0, p.h-1)
		p.leg(half, high, p.w-p.stem, p.h-1)
	}},
	'X': {width: Font.even, draw: func(p pen) {
		p.leg(0, 0, p.w-p.stem, p.h-1)
		p.leg(p.w-p.stem, 0, 0, p.h-1)
	}},
	'Y': {width: Font.even, draw: func(p pen) {
		m := p.h / 2
		p.vee(0, p.w, 0, m)
		x := p.centre(p.stem)
		p.rect(x, m, x+p.stem, p.h)
	}},
	'Z': {draw: func(p pen) {
		p.rect(0, 0, p.w, p.bar)
		p.rect(0, p.h-p.bar, p.w, p.h)
		p.leg(p.w-p.stem, p.bar, 0, p.h-p.bar-1)
	}},
}

// open returns how far the ends of a C turn back.
func (p pen) open() int { return max(0, (p.h-2*p.bar)/5) }

// even returns the width of a figure, or one more where a stem would not
// stand in its middle.
func (f Font) even() int { return f.width + (f.width-f.stem)%2 }

// serif returns how far the foot of an I reaches beyond its stem.
func (f Font) serif() int {
	n := max(1, f.stem/2)
	if across, _ := f.set.parts(); f.heavy() {
		n -= n % across
	}
	return n
}

// wide returns the width of an M or W, in which a stem stands in the middle.
func (f Font) wide() int {
	w := max(f.width*4/3, 3*f.stem+2)
	return w + (w-f.stem)%2
}

// stems draws an upright stroke on either side.
func (p pen) stems() {
	p.rect(0, 0, p.stem, p.h)
	p.rect(p.w-p.stem, 0, p.w, p.h)
}

// armed draws a stem with arms at the top, the middle and, if asked, the base.
func (p pen) armed(foot bool) {
	p.rect(0, 0, p.stem, p.h)
	p.rect(0, 0, p.w, p.bar)
	p.rect(0, p.middle(), p.w-max(1, p.w/5), p.middle()+p.bar)
	if foot {
		p.rect(0, p.h-p.bar, p.w, p.h)
	}
}

// leg draws a slanted stroke between two places of a stem's width, inside the
// box: where it needs to be wider than a stem it grows inwards.
func (p pen) leg(x0, y0, x1, y1 int) {
	t := p.slope(x1-x0, abs(y1-y0))
	wider := t - p.stem
	if x0 > x1 {
		x0 -= wider
	} else {
		x1 -= wider
	}
	p.slant(x0, y0, x1, y1, t)
}

// vee draws two strokes that meet in the middle of x0…x1.
func (p pen) vee(x0, x1, y0, y1 int) {
	x := x0 + (x1-x0-p.stem)/2
	p.leg(x0, y0, x, y1)
	p.leg(x1-p.stem, y0, x0+(x1-x0-p.stem+1)/2, y1)
}

// pee draws a P, the upper part of an R too.
func pee(p pen) {
	p.bowl(0, 0, p.w, p.middle()+p.bar, right)
	p.rect(0, 0, p.stem, p.h)
}

package glyph

// punctuation are the signs that stand in names and cues beside letters.
var punctuation = map[rune]master{
	',': {width: Font.tail, draw: comma},
	';': {width: Font.tail, draw: func(p pen) {
		d := p.dotSide()
		p.rect(p.w-p.stem, p.h/4, p.w, p.h/4+d)
		comma(p)
	}},
	'?': {draw: question},
	'¿': {draw: func(p pen) { p.turned(question) }},
	'¡': {width: Font.dot, draw: func(p pen) { p.turned(signs['!'].draw) }},
	'"': {width: func(f Font) int { return 2*f.dot() + max(1, f.stem/2) }, draw: func(p pen) {
		p.rect(0, 0, p.stem, max(p.dotSide(), p.h/4))
		p.rect(p.w-p.stem, 0, p.w, max(p.dotSide(), p.h/4))
	}},
	'(': {width: Font.bracket, draw: func(p pen) { p.bowl(0, 0, 3*p.w, p.h, left) }},
	')': {width: Font.bracket, draw: func(p pen) { p.bowl(-2*p.w, 0, p.w, p.h, right) }},
	'[': {width: Font.bracket, draw: func(p pen) { p.bowl(0, 0, 3*p.w, p.h, 0) }},
	']': {width: Font.bracket, draw: func(p pen) { p.bowl(-2*p.w, 0, p.w, p.h, 0) }},
	'{': {width: Font.brace, draw: brace},
	'}': {width: Font.brace, draw: func(p pen) { p.turned(brace) }},
	'<': {width: Font.small, draw: func(p pen) { p.point(p.w-p.stem, 0) }},
	'>': {width: Font.small, draw: func(p pen) { p.point(0, p.w-p.stem) }},
	'«': {width: Font.quotes, draw: func(p pen) {
		w := p.small()
		p.sub(0, 0, w, p.h).point(w-p.stem, 0)
		p.sub(p.w-w, 0, p.w, p.h).point(w-p.stem, 0)
	}},
	'»': {width: Font.quotes, draw: func(p pen) {
		w := p.small()
		p.sub(0, 0, w, p.h).point(0, w-p.stem)
		p.sub(p.w-w, 0, p.w, p.h).point(0, w-p.stem)
	}},
	'=': {width: Font.small, draw: func(p pen) {
		y := max(0, (p.h-1)/2-p.bar-p.bar/2)
		p.rect(0, y, p.w, y+p.bar)
		p.rect(0, p.h-y-p.bar, p.w, p.h-y)
	}},
	'~':  {width: func(f Font) int { return max(5, f.width) }, draw: func(p pen) { high := max(2+p.bar/2, p.h/4); p.sub(0, (p.h-high)/2, p.w, (p.h-high)/2+high).wave() }},
	'_':  {draw: func(p pen) { p.rect(0, p.h-p.bar, p.w, p.h) }},
	'|':  {width: Font.dot, draw: func(p pen) { p.rect(0, 0, p.w, p.h) }},
	'\\': {draw: func(p pen) { t := p.slope(p.w-p.stem, p.h-1); p.slant(0, 0, p.w-t, p.h-1, t) }},
	'·':  {width: Font.dot, draw: func(p pen) { y := (p.h - p.dotSide()) / 2; p.rect(0, y, p.w, y+p.dotSide()) }},
	'%': {width: func(f Font) int { return max(5, f.width*3/2) }, draw: func(p pen) {
		w, h := max(1, p.w*2/5), max(1, p.h*2/5)
		p.ring(0, 0, w, h)
		p.ring(p.w-w, p.h-h, p.w, p.h)
		p.leg(p.w-p.stem, 0, 0, p.h-1)
	}},
	'°': {width: func(f Font) int { return max(minWidth, f.across(f.raised())) }, draw: func(p pen) { p.ring(0, 0, p.w, p.raised()) }},
	'#': {width: func(f Font) int { return max(5, f.wide()) }, draw: func(p pen) {
		x, y := (p.w-2*p.stem)/3, (p.h-2*p.bar)/3
		x, y = max(1, x), max(1, y)
		p.rect(x, 0, x+p.stem, p.h)
		p.rect(p.w-x-p.stem, 0, p.w-x, p.h)
		p.rect(0, y, p.w, y+p.bar)
		p.rect(0, p.h-y-p.bar, p.w, p.h-y)
	}},
	'&': {width: func(f Font) int { return max(5, f.width*5/4) }, draw: func(p pen) {
		m := p.middle()
		p.bowl(p.w/6, 0, p.w-p.w/4, m+p.bar, all)
		p.bowl(0, m, p.w-p.stem-1, p.h, all)
		p.leg(p.w/3, m, p.w-p.stem, p.h-1)
		p.rect(p.w-p.stem, m+p.bar, p.w, m+2*p.bar)
	}},
	'@': {width: func(f Font) int { return max(6, f.wide()) }, draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h, all)
		p.clear(p.w-p.stem, p.h-p.bar-max(1, p.h/5), p.w, p.h-p.bar)
		in := p.sub(p.w/2-p.stem/2, max(p.bar+1, p.h/4), p.w, p.h-max(p.bar+1, p.h/4))
		in.bowl(0, 0, in.w, in.h, left)
	}},
	'*': {width: Font.small, draw: func(p pen) {
		high := max(3, min(p.h*2/3, p.down(p.w)))
		star := p.sub(0, 0, p.w, high)
		x := p.centre(p.stem)
		star.rect(x, 0, x+p.stem, high)
		star.leg(0, high/6, p.w-p.stem, high-1-high/6)
		star.leg(p.w-p.stem, high/6, 0, high-1-high/6)
	}},
	'±': {width: Font.small, draw: func(p pen) {
		signs['+'].draw(p.sub(0, 0, p.w, p.h-p.bar-1))
		p.rect(0, p.h-p.bar, p.w, p.h)
	}},
	'÷': {width: Font.small, draw: func(p pen) {
		dash(p)
		d, x := max(1, min(p.dotSide(), p.middle()-1)), p.centre(p.stem)
		y := max(0, p.middle()-d-max(1, p.bar/2))
		p.rect(x, y, x+p.stem, y+d)
		p.rect(x, 2*p.middle()+p.bar-y-d, x+p.stem, 2*p.middle()+p.bar-y)
	}},
}

func comma(p pen) {
	d := p.dotSide()
	p.rect(p.w-p.stem, p.h-2*d, p.w, p.h-d)
	p.rect(0, p.h-d, p.stem, p.h)
}

func question(p pen) {
	d := min(p.dotSide(), max(1, p.h/5))
	neck, m, x := p.h-d-max(1, p.bar*2/3), p.middle(), p.centre(p.stem)
	p.bowl(0, 0, p.w, m+p.bar, right)
	p.clear(0, p.bar, p.w-p.stem, m)
	p.clear(0, m, x, m+p.bar)
	p.rect(x, m, x+p.stem, neck)
	p.rect(x, p.h-d, x+p.stem, p.h)
}

func brace(p pen) {
	nib := p.w - 2*p.stem
	p.rect(nib, 0, nib+p.stem, p.h)
	p.rect(nib, 0, p.w, p.bar)
	p.rect(nib, p.h-p.bar, p.w, p.h)
	p.clear(nib, p.middle(), nib+p.stem, p.middle()+p.bar)
	p.rect(0, p.middle(), max(1, nib), p.middle()+p.bar)
}

// point draws an angle from one side of the box to its tip and back.
func (p pen) point(from, tip int) {
	reach := max(2, min(p.middle(), p.down(p.w)))
	m := p.h / 2
	p.leg(from, max(0, m-reach), tip, m)
	p.leg(tip, p.h-1-m, from, min(p.h-1, p.h-1-m+reach))
}

// ring lights an outline with round corners, or the whole where it is too
// small to have anything within.
func (p pen) ring(x0, y0, x1, y1 int) {
	r := p.sub(x0, y0, x1, y1)
	if r.w < 3 || r.h < 3 {
		r.rect(0, 0, r.w, r.h)
		return
	}
	r.stem, r.bar = max(1, min(p.stem, r.w/3)), max(1, min(p.bar, r.h/3))
	r.bowl(0, 0, r.w, r.h, all)
}

// turned draws upside down and back to front.
func (p pen) turned(draw func(pen)) {
	c := newCanvas(p.w, p.h)
	draw(pen{c: c, w: p.w, h: p.h, Font: p.Font})
	for y := range p.h {
		for x := range p.w {
			if c.at(x, y) {
				p.light(p.w-1-x, p.h-1-y)
			}
		}
	}
}

// dotSide returns the height of a square dot of a stroke's width.
func (f Font) dotSide() int { return max(1, f.down(f.stem)) }

// tail returns the width of a dot with a tail to its left.
func (f Font) tail() int { return f.stem + max(1, f.stem/2) }

// bracket returns the width of a bracket.
func (f Font) bracket() int { return f.stem + max(1, f.stem*2/3) }

// brace returns the width of a bracket with a nib.
func (f Font) brace() int { return 2*f.stem + max(1, f.stem*2/3) }

// quotes returns the width of a double angle.
func (f Font) quotes() int { return 2*f.small() + max(1, f.stem/2) }

// raised returns the height of a small ring at the top.
func (f Font) raised() int { return max(3, f.height*2/5) }

package glyph

// latin are the capitals of the European Latin alphabets beyond A to Z that
// are no letter with a mark.
var latin = map[rune]master{
	'Æ': {width: Font.joined, draw: func(p pen) {
		a := p.sub(0, 0, p.w-p.Font.width+p.stem, p.h)
		a.bowl(0, 0, a.w, a.h+a.bar, topLeft)
		a.rect(0, a.h/2, a.w, a.h/2+a.bar)
		p.sub(a.w-p.stem, 0, p.w, p.h).armed(true)
	}},
	'Œ': {width: Font.joined, draw: func(p pen) {
		o := p.sub(0, 0, p.w-p.Font.width+p.stem, p.h)
		o.bowl(0, 0, o.w, o.h, left)
		p.sub(o.w-p.stem, 0, p.w, p.h).armed(true)
	}},
	'Ø': {width: func(f Font) int { return f.even() + 2 }, draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h, all)
		p.leg(p.w-p.stem, 0, 0, p.h-1)
	}},
	'Ł': {width: Font.barred, draw: func(p pen) {
		letters['L'].draw(p.sub(p.stem, 0, p.w, p.h))
		p.leg(min(p.w-p.stem, 2*p.stem+p.Font.width/3), p.h/4, 0, max(p.h/4+2, p.h*3/5))
	}},
	'Đ': {width: Font.barred, draw: func(p pen) {
		letters['D'].draw(p.sub(p.stem, 0, p.w, p.h))
		p.rect(0, p.middle(), max(2*p.stem+1, p.w/2), p.middle()+p.bar)
	}},
	'Þ': {draw: func(p pen) {
		p.rect(0, 0, p.stem, p.h)
		p.bowl(0, max(1, p.h/5), p.w, p.h-max(1, p.h/5), right)
	}},
	'Ħ': {width: func(f Font) int { return f.width + 2*f.stem }, draw: func(p pen) {
		letters['H'].draw(p.sub(p.stem, 0, p.w-p.stem, p.h))
		p.rect(0, max(1, p.h/5), p.w, max(1, p.h/5)+p.bar)
	}},
	'Ŧ': {width: Font.even, draw: func(p pen) {
		letters['T'].draw(p)
		p.rect(p.w/6, p.middle(), p.w-p.w/6, p.middle()+p.bar)
	}},
	'Ŋ': {draw: func(p pen) {
		p.bowl(0, 0, p.w, p.h+p.bar, topRight)
		p.rect(p.w/3, p.h-p.bar, p.w, p.h)
	}},
	'Ə': {draw: func(p pen) {
		m := p.middle()
		p.bowl(0, 0, p.w, p.h, all)
		p.clear(0, p.bar+p.hook(), p.stem, m)
		p.rect(0, m, p.w, m+p.bar)
	}},
}

// joined returns the width of two letters that share a stem.
func (f Font) joined() int { return 2*f.width - f.stem }

// barred returns the width of a letter whose stroke reaches out on the left.
func (f Font) barred() int { return f.width + f.stem }

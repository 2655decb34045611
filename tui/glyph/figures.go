package glyph

// master is how one glyph is drawn. A nil width is that of a figure.
type master struct {
	width func(Font) int
	draw  func(pen)
}

// masters holds the family. Small letters and letters with marks are not in
// it: parse takes them apart.
var masters = map[rune]master{}

func init() {
	for _, part := range []map[rune]master{figures, signs, punctuation, letters, latin, shapes, arrows} {
		for r, m := range part {
			masters[r] = m
		}
	}
}

// figures are the ten digits. What tells those apart that are easily mixed
// up: the 1 stands on a foot and the 7 leans; the 6 and the 9 are open where
// the 8 is closed, and the 8 has a waist; the 5 has a square shoulder.
var figures = map[rune]master{
	'0': {draw: func(p pen) { p.bowl(0, 0, p.w, p.h, all) }},
	'1': {draw: one},
	'2': {draw: two},
	'3': {draw: func(p pen) {
		m := p.middle()
		p.bowl(0, 0, p.w, m+p.bar, right|topLeft)
		p.bowl(0, m, p.w, p.h, right|bottomLeft)
		p.clear(0, p.bar+p.hook(), p.stem, p.h-p.bar-p.hook())
		p.clear(0, m, p.w/3, m+p.bar)
	}},
	'4': {draw: four},
	'5': {draw: func(p pen) {
		m := p.middle()
		p.bowl(0, m, p.w, p.h, topRight|base)
		p.clear(0, m+p.bar, p.stem, p.h-p.bar-p.hook())
		p.rect(0, 0, p.stem, m+p.bar)
		p.rect(0, 0, p.w, p.bar)
	}},
	'6': {draw: func(p pen) {
		m := p.low()
		p.bowl(0, 0, p.w, p.h, all)
		p.clear(p.stem, p.bar+p.hook(), p.w, m)
		p.bowl(0, m, p.w, p.h, right|bottomLeft)
	}},
	'7': {draw: func(p pen) {
		foot := p.w / 4
		t := p.slope(p.w-p.stem-foot, p.h-1-p.bar)
		p.rect(0, 0, p.w, p.bar)
		p.slant(p.w-t, p.bar, foot, p.h-1, t)
	}},
	'8': {draw: pen.eight},
	'9': {draw: func(p pen) {
		m := p.h - p.low() - p.bar
		p.bowl(0, 0, p.w, p.h, all)
		p.clear(0, m+p.bar, p.w-p.stem, p.h-p.bar-p.hook())
		p.bowl(0, 0, p.w, m+p.bar, left|topRight)
	}},
}

// middle returns the top of a bar in the middle; an odd pixel goes below.
func (p pen) middle() int { return (p.h - p.bar) / 2 }

// low is middle with an odd pixel above: it opens the 6 and the 9 wider.
func (p pen) low() int { return (p.h - p.bar + 1) / 2 }

// hook returns how far the end of an open stroke turns back.
func (p pen) hook() int { return (p.middle() - p.bar) / 5 }

// eight draws two bowls that share a bar, with a waist.
func (p pen) eight() {
	m := p.middle()
	p.bowl(0, 0, p.w, m+p.bar, all)
	p.bowl(0, m, p.w, p.h, all)
}

// centre returns the left edge of something t wide in the middle of the box.
func (p pen) centre(t int) int { return (p.w - t) / 2 }

func one(p pen) {
	x := p.centre(p.stem)
	p.rect(x, 0, x+p.stem, p.h)
	p.rect(p.w/8, p.h-p.bar, p.w-p.w/8, p.h)
	// The flag grows out of the stem to the left, and never thicker than it.
	reach, drop := max(1, x-p.w/8), max(1, p.h/5)
	for y := range drop + 1 {
		end := x - share(reach, y, drop)
		p.rect(end, y, min(end+p.stem+p.stem/2+1, x+1), y+1)
	}
}

func two(p pen) {
	bend := p.middle() - p.bar/2
	p.bowl(0, 0, p.w, max(p.middle()+p.bar, 2*p.bar+1), top)
	p.clear(0, p.bar+p.hook(), p.stem, p.h)
	p.clear(0, bend, p.w, p.h)
	end := p.h - p.bar
	t := p.slope(p.w-p.stem, end-bend)
	p.slant(p.w-t, bend, 0, end, t)
	p.rect(0, end, p.w, p.h)
}

func four(p pen) {
	shelf := p.h - p.bar - max(1, p.h/5)
	x := p.w - p.stem - p.w/6
	t := p.slope(x, shelf)
	p.slant(x+p.stem-t, 0, 0, shelf, t)
	p.rect(0, shelf, p.w, shelf+p.bar)
	p.rect(x, 0, x+p.stem, p.h)
}

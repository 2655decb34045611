package glyph

// arrows point where a player is to go: as the sign of a key, or filling a
// screen.
var arrows = map[rune]master{
	'←': {width: Font.square, draw: func(p pen) { p.arrow(func(x, y int) (int, int) { return y, x }, p.w, p.h) }},
	'→': {width: Font.square, draw: func(p pen) { p.arrow(func(x, y int) (int, int) { return p.w - 1 - y, x }, p.w, p.h) }},
	'↓': {width: Font.square, draw: func(p pen) { p.arrow(func(x, y int) (int, int) { return x, p.h - 1 - y }, p.h, p.w) }},
	'↖': {width: Font.square, draw: func(p pen) { p.corner(false, false) }},
	'↗': {width: Font.square, draw: func(p pen) { p.corner(true, false) }},
	'↙': {width: Font.square, draw: func(p pen) { p.corner(false, true) }},
	'↘': {width: Font.square, draw: func(p pen) { p.corner(true, true) }},
}

// arrow draws an arrow that points up in a box of its own, long pixels high and
// wide pixels wide, through a map onto the pen's box.
func (p pen) arrow(onto func(x, y int) (int, int), long, wide int) {
	neck, in := (long+1)/2, max(1, wide*3/10)
	for y := range long {
		from, to := in, wide-in
		if y < neck {
			half := max(1, share(wide, y+1, 2*neck))
			from, to = wide/2-half, wide-wide/2+half
		}
		for x := max(0, from); x < min(wide, to); x++ {
			p.light(onto(x, y))
		}
	}
}

// corner draws an arrow into the upper left corner, or another one: a triangle
// in the corner, and a shaft from the middle of its long side.
func (p pen) corner(mirrored, fallen bool) {
	for y := range p.h {
		for x := range p.w {
			dx, dy := float64(x)/float64(p.w), float64(y)/float64(p.h)
			head := dx+dy < 0.75
			shaft := dx-dy < 0.26 && dy-dx < 0.26
			if !head && !shaft {
				continue
			}
			at, row := x, y
			if mirrored {
				at = p.w - 1 - x
			}
			if fallen {
				row = p.h - 1 - y
			}
			p.light(at, row)
		}
	}
}

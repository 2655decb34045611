package review

// dots is a drawing in dots, two across and four down to a cell, as the
// patterns of Braille have them (The Unicode Standard, block U+2800).
type dots struct {
	width, height int // in cells
	bits          []rune
}

func newDots(width, height int) dots { return dots{width, height, make([]rune, width*height)} }

// brailleBits holds the bit of each dot of a cell, by line and column.
var brailleBits = [4][2]rune{{0x01, 0x08}, {0x02, 0x10}, {0x04, 0x20}, {0x40, 0x80}}

// set sets one dot; x and y count dots from the upper left corner.
func (d *dots) set(x, y int) {
	if x >= 0 && x < 2*d.width && y >= 0 && y < 4*d.height {
		d.bits[y/4*d.width+x/2] |= brailleBits[y%4][x%2]
	}
}

// line sets the dots between two, both among them (J. E. Bresenham, IBM
// Systems Journal 1965;4:25–30).
func (d *dots) line(x, y, toX, toY int) {
	dx, dy := abs(toX-x), -abs(toY-y)
	stepX, stepY := 1, 1
	if toX < x {
		stepX = -1
	}
	if toY < y {
		stepY = -1
	}
	for off := dx + dy; ; {
		d.set(x, y)
		if x == toX && y == toY {
			return
		}
		twice := 2 * off
		if twice >= dy {
			off += dy
			x += stepX
		}
		if twice <= dx {
			off += dx
			y += stepY
		}
	}
}

func abs(n int) int { return max(n, -n) }

// char returns the pattern of a cell, and false if no dot of it is set.
func (d *dots) char(x, y int) (rune, bool) {
	bits := d.bits[y*d.width+x]
	return 0x2800 + bits, bits != 0
}

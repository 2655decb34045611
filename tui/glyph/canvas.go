package glyph

import "math"

// canvas is a grid of pixels.
type canvas struct {
	w, h int
	on   []bool
}

func newCanvas(w, h int) *canvas {
	w, h = max(w, 0), max(h, 0)
	return &canvas{w: w, h: h, on: make([]bool, w*h)}
}

func (c *canvas) at(x, y int) bool { return c.on[y*c.w+x] }

func (c *canvas) set(x, y int, on bool) {
	if x >= 0 && x < c.w && y >= 0 && y < c.h {
		c.on[y*c.w+x] = on
	}
}

// pen draws one glyph, or a mark, into its box of w × h pixels, whose upper
// left corner is at x, y of the canvas. Coordinates are pixels of the box; ends
// are exclusive.
type pen struct {
	c          *canvas
	x, y, w, h int
	Font
}

// light lights a pixel of the box.
func (p pen) light(x, y int) { p.put(x, y, true) }

// put lights or clears a pixel of the box, and none outside it.
func (p pen) put(x, y int, on bool) {
	if x >= 0 && x < p.w && y >= 0 && y < p.h {
		p.c.set(p.x+x, p.y+y, on)
	}
}

// sub returns a pen for a part of the box.
func (p pen) sub(x0, y0, x1, y1 int) pen {
	p.x, p.y, p.w, p.h = p.x+x0, p.y+y0, max(0, x1-x0), max(0, y1-y0)
	return p
}

// fill lights, or clears, a rectangle.
func (p pen) fill(x0, y0, x1, y1 int, on bool) {
	for y := max(y0, 0); y < min(y1, p.h); y++ {
		for x := max(x0, 0); x < min(x1, p.w); x++ {
			p.put(x, y, on)
		}
	}
}

// rect lights a rectangle.
func (p pen) rect(x0, y0, x1, y1 int) { p.fill(x0, y0, x1, y1, true) }

// clear darkens a rectangle.
func (p pen) clear(x0, y0, x1, y1 int) { p.fill(x0, y0, x1, y1, false) }

// corners says which corners of a bowl are round.
type corners int

const (
	topLeft corners = 1 << iota
	topRight
	bottomLeft
	bottomRight
	left  = topLeft | bottomLeft
	right = topRight | bottomRight
	top   = topLeft | topRight
	base  = bottomLeft | bottomRight
	all   = left | right
)

// bowl lights the outline of a rectangle, one stroke thick, with the given
// corners rounded. What of it is above or below the box is not drawn.
func (p pen) bowl(x0, y0, x1, y1 int, round corners) {
	pw, ph := p.set.pixel()
	// Round enough to tell an O from a D, square enough to be sharp.
	r := 0.3 * math.Min(float64(p.w)*pw, float64(p.h)*ph)
	r = math.Max(r, 1.75*math.Max(pw, ph))
	rx := math.Min(r/pw, float64(x1-x0)/2)
	ry := math.Min(r/ph, float64(y1-y0)/2)
	for y := max(y0, 0); y < min(y1, p.h); y++ {
		for x := x0; x < x1; x++ {
			if inRound(x, y, x0, y0, x1, y1, rx, ry, round, true) &&
				!inRound(x, y, x0+p.stem, y0+p.bar, x1-p.stem, y1-p.bar, rx-float64(p.stem), ry-float64(p.bar), round, false) {
				p.light(x, y)
			}
		}
	}
}

// inRound reports whether the middle of a pixel lies in a rectangle whose
// corners are quarters of an ellipse. With clip the outermost pixel of a round
// corner never does: at the smallest sizes that pixel is all the roundness
// there is.
func inRound(x, y, x0, y0, x1, y1 int, rx, ry float64, round corners, clip bool) bool {
	if x < x0 || x >= x1 || y < y0 || y >= y1 {
		return false
	}
	corner, fromX, fromY := topLeft, x-x0, y-y0
	if x1-1-x < fromX {
		corner, fromX = corner<<1, x1-1-x
	}
	if y1-1-y < fromY {
		corner, fromY = corner<<2, y1-1-y
	}
	if round&corner == 0 {
		return true
	}
	if clip && fromX == 0 && fromY == 0 {
		return false
	}
	dx, dy := rx-float64(fromX)-0.5, ry-float64(fromY)-0.5
	return dx <= 0 || dy <= 0 || (dx/rx)*(dx/rx)+(dy/ry)*(dy/ry) <= 1
}

// slant lights a stroke from the pixels x0… of the row y0 to the pixels x1…
// of the row y1, t wide in every row. It is the same from either end.
func (p pen) slant(x0, y0, x1, y1, t int) {
	if y1 < y0 {
		x0, y0, x1, y1 = x1, y1, x0, y0
	}
	for y := y0; y <= y1; y++ {
		x := x0
		if up, down := y-y0, y1-y; down >= up && up > 0 {
			x = x0 + share(x1-x0, up, up+down)
		} else if up > 0 {
			x = x1 + share(x0-x1, down, up+down)
		}
		p.rect(x, y, x+t, y+1)
	}
}

// share returns part of whole of n to the nearest pixel. Halves go away from
// zero, so that the share of -n is minus that of n.
func share(n, part, whole int) int {
	return int(math.Round(float64(n*part) / float64(whole)))
}

// slope returns the width in every row of a stroke that crosses dx pixels
// from the outer edge of a stem to that of another, in so many rows down. It
// looks no thinner than a stem and has no break.
func (p pen) slope(dx, rows int) int {
	pw, ph := p.set.pixel()
	dx, rows = abs(dx), max(rows, 1)
	lean := float64(dx) * pw / (float64(rows) * ph)
	t := max(p.stem, int(math.Round(float64(p.stem)*math.Sqrt(1+lean*lean))))
	for t*rows < dx-(t-p.stem) {
		t++
	}
	return t
}

func abs(n int) int { return max(n, -n) }

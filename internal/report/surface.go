package report

// colour is a colour of a chart, red, green and blue.
type colour struct{ r, g, b uint8 }

// Ink of the charts. They are read in black and white: colour tells nothing
// that shape does not.
var (
	ink  = colour{0, 0, 0}
	blue = colour{0x00, 0x72, 0xB2} // of Okabe and Ito's set, 5.2 : 1 on white
	pale = colour{0xC8, 0xC8, 0xC8}
)

// point is a place on a surface, in points (1/72 inch) from its upper left
// corner.
type point struct{ x, y float64 }

// pen is how a line is drawn; the width is in points.
type pen struct {
	colour colour
	width  float64
	dashed bool
}

// dash is a dashed line's pattern, in points: drawn, left out.
var dash = [2]float64{4, 2}

// anchor is which part of a text stands at its place.
type anchor int

const (
	start anchor = iota
	middle
	end
)

// lettering is how a text is set: its size in points, its weight, and whether
// it reads from below upwards.
type lettering struct {
	size    float64
	bold    bool
	at      anchor
	upright bool
}

// surface is what a chart is drawn on: a page of a PDF, or an SVG element.
type surface interface {
	// line draws a line through the points.
	line(p pen, through ...point)
	// area fills the polygon with the corners.
	area(c colour, corners ...point)
	// disc draws a circle, filled, or as a ring of the line width.
	disc(c colour, at point, radius float64, ring float64)
	// text writes a text whose baseline runs through the place.
	text(l lettering, at point, s string)
}

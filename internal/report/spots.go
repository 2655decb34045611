package report

import "slices"

// spots draws the figures of a chart.
func (c *Chart) spots(on surface, f *frame) {
	half := min(f.x(0.42)-f.x(0), 9)
	for i, spot := range c.Spots {
		if !spot.Known() {
			continue
		}
		at := f.x(float64(i))
		switch c.Kind {
		case Columns:
			column(on, at, half, f.y(0), f.y(spot.Values[0]), spot.Open)
		case Spans:
			whisker(on, at, min(half, 4), f.y(spot.Values[0]), f.y(spot.Values[1]), f.y(spot.Values[2]), spot.Open)
		}
	}
	if c.Kind == Lines {
		for n := range c.Names {
			c.series(on, f, n)
		}
	}
}

// series draws one line through all spots, broken at those that are not known.
func (c *Chart) series(on surface, f *frame, n int) {
	var through []point
	flush := func() {
		if len(through) > 1 {
			on.line(lineOf(n), through...)
		}
		through = nil
	}
	for i, spot := range c.Spots {
		if !spot.Known() {
			flush()
			continue
		}
		through = append(through, point{f.x(float64(i)), f.y(spot.Values[n])})
	}
	flush()
}

// column draws one column, filled unless it is open.
func column(on surface, at, half, from, to float64, open bool) {
	if from-to < 0.4 {
		return
	}
	corners := []point{{at - half, from}, {at - half, to}, {at + half, to}, {at + half, from}}
	if !open {
		on.area(blue, corners...)
		return
	}
	line := min(0.8, half/2)
	for i := range corners { // within the column's own width
		if i < 2 {
			corners[i].x += line / 2
		} else {
			corners[i].x -= line / 2
		}
	}
	on.line(pen{blue, line, false}, slices.Concat(corners, corners[:1])...)
}

// whisker draws a median on the line of its middle half.
func whisker(on surface, at, half, low, middle, high float64, open bool) {
	on.line(pen{ink, 0.9, false}, point{at, low}, point{at, high})
	radius := max(1.2, min(half, 2.6))
	if open {
		on.disc(blue, point{at, middle}, radius-0.3, 0.6)
		return
	}
	on.disc(blue, point{at, middle}, radius, 0)
}

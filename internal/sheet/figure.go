package sheet

// figureLines sets a figure to be read from afar, its unit beside it. It
// shrinks to the floor, in points, where it is too wide, and is broken where
// that does not suffice.
func figureLines(t *typeface, g Figure, size, floor, width float64) []line {
	for {
		number, unit := face{true, size, true}, face{true, max(size*0.45, 9), true}
		l := line{runs: []run{{number, g.Value}}, gap: size * 0.09 * point}
		if g.Unit != "" {
			l.runs = append(l.runs, run{unit, g.Unit})
		}
		if l.width(t) <= width {
			return []line{l}
		}
		if size <= floor {
			return append(t.wrap(number, g.Value, width), t.wrap(unit, g.Unit, width)...)
		}
		size = max(size-1, floor)
	}
}

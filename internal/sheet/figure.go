package sheet

import "coldfloor/internal/paper"

// figureLines sets a figure to be read from afar, its unit beside it. It
// shrinks to the floor, in points, where it is too wide, and is broken where
// that does not suffice.
func figureLines(t *paper.Typeface, g Figure, size, floor, width float64) []paper.Line {
	for {
		number, unit := paper.Face{Bold: true, Size: size, Tight: true}, paper.Face{Bold: true, Size: max(size*0.45, 9), Tight: true}
		l := paper.Line{Runs: []paper.Run{paper.Text(number, g.Value)}, Gap: size * 0.09 * paper.Point}
		if g.Unit != "" {
			l.Runs = append(l.Runs, paper.Text(unit, g.Unit))
		}
		if l.Width(t) <= width {
			return []paper.Line{l}
		}
		if size <= floor {
			return append(t.Wrap(number, g.Value, width), t.Wrap(unit, g.Unit, width)...)
		}
		size = max(size-1, floor)
	}
}

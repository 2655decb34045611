package tui

import (
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
)

// timeFont returns the largest font for the time. It does not depend on which
// figures the time has, so that the clock stands still while it counts.
func (f frame) timeFont(rows int) (glyph.Font, bool) {
	wide := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return '0'
		}
		return r
	}, f.scene.time)
	if len(wide) == 1 {
		wide = "00"
	}
	cols := f.width - 2*f.edge() - 2 // off the bars at the edges
	if font, ok := glyph.Choose(wide, cols, rows-1, f.style.set); ok && rows >= 5 {
		return font, true // off the banner, of which the top of a 7 would look like a part
	}
	return glyph.Choose(wide, cols, rows, f.style.set)
}

// edge returns how wide the bar is that says which side is worked.
func (f frame) edge() int { return max(3, f.width/16) }

// time draws the time left with the shape of the phase beside it. In the last
// seconds the whole field is filled and the figure cut out of it: once, with
// nothing that blinks.
func (f frame) time(rows int) []string {
	inner := f.width - 2*f.edge()
	drawn := []string{safetext.Centre(f.scene.time, inner)}
	lines := make([]string, 0, rows)
	if font, ok := f.timeFont(rows); ok {
		if font.Height() <= float64(rows-1) {
			lines = append(lines, f.timeLine(strings.Repeat(" ", inner)))
			rows--
		}
		drawn = f.withShape(font, rows, inner)
	}
	for _, l := range centreRows(drawn, rows, inner) {
		lines = append(lines, f.timeLine(l))
	}
	return lines
}

// withShape draws the time, and to its left the shape as large as fits beside
// it. Where the shape would be smaller than three lines it is left out.
func (f frame) withShape(font glyph.Font, rows, inner int) []string {
	width, _ := font.Size(f.scene.time)
	shape := string(f.scene.phase.Look().Shape)
	gap := max(3, inner/9) // enough that the shape is not read as a figure
	for high := max(3, rows*3/4); high >= 3; high-- {
		beside, ok := glyph.Choose(shape, inner-width-gap-2, high, f.style.set) // and off the bars at the edges
		if !ok {
			continue
		}
		w, h := beside.Size(shape)
		if h < 3 {
			break
		}
		margin := (inner - width - gap - w) / 2
		left := centreRows(beside.Render(shape, w), rows, w)
		right := centreRows(font.Render(f.scene.time, width), rows, width)
		for i := range left {
			left[i] = strings.Repeat(" ", margin) + left[i] + strings.Repeat(" ", gap) + right[i] +
				strings.Repeat(" ", inner-width-gap-w-margin)
		}
		return left
	}
	return font.Render(f.scene.time, inner)
}

// timeLine draws one line of the time's field, with the bar at the edge that
// stands for the side of the body that works.
func (f frame) timeLine(l string) string {
	side, edge := f.scene.side, f.edge()
	blank := strings.Repeat(" ", edge)
	if f.scene.last { // the bar is cut out like the figures, a cell off the edge so as to be seen
		left, right := blank, blank
		bar := f.style.set.Invert(blank[1:])
		switch side {
		case plan.Left:
			left = " " + bar
		case plan.Right:
			right = bar + " "
		}
		return f.style.filled(f.scene.phase, left+l+right)
	}
	solid := f.style.filled(f.scene.phase, blank)
	figures := func(l string) string { return f.style.figures(f.scene.phase, l) }
	switch side {
	case plan.Right:
		return blank + figures(l) + solid
	case plan.Left:
		return solid + figures(strings.TrimRight(l, " "))
	}
	if l = strings.TrimRight(blank+l, " "); l == "" {
		return ""
	}
	return figures(l)
}

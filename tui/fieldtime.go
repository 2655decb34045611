package tui

import (
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// timeFont returns the font of the largest figure in a field of so many rows,
// and whether anything can be drawn large.
func (f frame) timeFont(rows int) (glyph.Font, bool) {
	if f.scene.phase == palette.Paused {
		return f.style.inset(f.scene.count.widest, f.inner(), rows)
	}
	l := f.lay(rows)
	return l.font, l.large
}

// time draws what is counted, with the shape of the phase beside it. In the
// last seconds the whole field is filled and the figure cut out of it: once,
// with nothing that blinks.
func (f frame) time(rows int) []string {
	drawn := f.counted(rows)
	lines := make([]string, 0, rows)
	for _, l := range centreRows(drawn, rows, f.inner()) {
		lines = append(lines, f.timeLine(l))
	}
	return lines
}

// counted draws what is counted in the middle of the field, each line as wide
// as it.
func (f frame) counted(rows int) []string {
	c, inner := f.scene.count, f.inner()
	if f.scene.phase == palette.Paused {
		font, ok := f.timeFont(rows)
		if !ok {
			return []string{safetext.Centre(c.figure, inner)}
		}
		w, _ := font.Size(c.figure)
		return f.withShape(font.In(c.figure, w, rows), rows, w, max(3, inner/20), max(3, inner/20))
	}
	l := f.lay(rows)
	if !l.large {
		return []string{safetext.Centre(c.plain(), inner)}
	}
	body := l.font.In(c.figure, l.cells, rows)
	wide := l.cells
	if len(l.side) > 0 {
		wide += l.gap + l.wide
		for i, row := range l.drawSide(rows) {
			body[i] += strings.Repeat(" ", l.gap) + row
		}
	}
	if l.before.cells > 0 {
		wide += l.before.cells + l.gap
		for i, row := range l.before.draw(l.before.cells, rows) {
			body[i] = row + strings.Repeat(" ", l.gap) + body[i]
		}
	}
	return f.withShape(body, rows, wide, l.left, l.right)
}

// withShape puts the shape of the phase to the left of what is drawn, wide
// cells wide, as large as fits beside it and so many cells off the edges. Where
// the shape would be smaller than three lines it is left out.
func (f frame) withShape(body []string, rows, wide, before, after int) []string {
	inner := f.inner()
	shape := string(f.scene.phase.Look().Shape)
	gap := max(3, inner/9) // enough that the shape is not read as a figure
	for high := max(3, rows*3/4); high >= 3; high-- {
		beside, ok := f.style.choose(shape, inner-wide-gap-before-after, float64(high))
		if !ok {
			continue
		}
		w, h := beside.Size(shape)
		if h < 3 {
			break
		}
		for i, l := range beside.In(shape, w, rows) {
			body[i] = l + strings.Repeat(" ", gap) + body[i]
		}
		wide += w + gap
		break
	}
	left := max(0, min(max(before, (inner-wide)/2), inner-wide-after))
	for i := range body {
		body[i] = strings.Repeat(" ", left) + body[i] + strings.Repeat(" ", max(0, inner-wide-left))
	}
	return body
}

// timeLine draws one line of the field, with the bar at the edge that stands
// for the side of the body that works. Nobody works in a pause.
func (f frame) timeLine(l string) string {
	side, edge := f.side(), f.edge()
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

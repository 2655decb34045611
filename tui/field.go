package tui

import (
	"strings"

	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
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
	return glyph.Choose(wide, f.width-2*f.edge(), rows, f.style.set)
}

// edge returns how wide the bar is that says which side is worked.
func (f frame) edge() int { return max(2, f.width/16) }

// time draws the time left with the shape of the phase beside it. In the last
// seconds the whole field is filled and the figure cut out of it: once, with
// nothing that blinks.
func (f frame) time(rows int) []string {
	inner := f.width - 2*f.edge()
	drawn := []string{safetext.Centre(f.scene.time, inner)}
	if font, ok := f.timeFont(rows); ok {
		drawn = f.withShape(font, rows, inner)
	}
	lines := make([]string, 0, rows)
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
	gap := max(3, inner/14) // enough that a ring is not read as a nought
	for high := max(3, rows*3/4); high >= 3; high-- {
		beside, ok := glyph.Choose(shape, inner-width-gap, high, f.style.set)
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

// timeLine draws one line of the time's field, with the edges beside it.
func (f frame) timeLine(l string) string {
	blank := strings.Repeat(" ", f.edge())
	if f.scene.last {
		return f.style.filled(f.scene.phase, blank+l+blank)
	}
	left, right := f.sideEdges()
	ink, solid := f.style.ink(f.scene.phase), f.style.filled(f.scene.phase, blank)
	switch {
	case right:
		return blank + ink.Render(l) + solid
	case left:
		return solid + ink.Render(strings.TrimRight(l, " "))
	}
	if l = strings.TrimRight(blank+l, " "); l == "" {
		return ""
	}
	return ink.Render(l)
}

// sideEdges reports on which edges of the field a bar stands: the side of the
// body that works.
func (f frame) sideEdges() (left, right bool) {
	s := f.scene
	if s.phase != palette.Work && s.phase != palette.OwnPace && s.phase != palette.SideChange {
		return false, false
	}
	return s.side == "left", s.side == "right"
}

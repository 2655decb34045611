package tui

import (
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// edge returns how wide the bar is that says which side is worked.
func (f frame) edge() int { return max(3, f.width/16) }

// inner returns how wide the field is between the bars.
func (f frame) inner() int { return f.width - 2*f.edge() }

// margins returns the blank between what is drawn and the edges of the field: a
// figure's width off a bar, or the bar would be read as a figure.
func (f frame) margins(font glyph.Font) (left, right int) {
	w, _ := font.Size("0")
	switch f.side() {
	case plan.Left:
		return w, 1
	case plan.Right:
		return 1, w
	}
	return 1, 1
}

// side returns the side that a bar stands for. Nobody works in a pause.
func (f frame) side() plan.Side {
	if f.scene.phase == palette.Paused {
		return ""
	}
	return f.scene.side
}

// layout is how a field is shared out between the figure and what is beside it.
type layout struct {
	large       bool // the figure is drawn large
	font        glyph.Font
	cells       int     // width of the figure
	gap         int     // between parts
	before      lines   // what is said before the figure; of no width where it has no room there
	left, right int     // blank between it all and the edges of the field
	side        []lines // what is beside the figure, from the top
	wide        int     // its width
}

// lines is a text beside the figure, drawn large or as it is.
type lines struct {
	text  string
	large bool
	font  glyph.Font
	cells int
	rows  int
}

// gapOf returns the blank between a figure and what is beside it.
func gapOf(font glyph.Font) int { w, _ := font.Size("0"); return max(2, w*2/3) }

// lay shares a field out. It does not depend on which figures there are, so
// that a clock stands still while it counts.
func (f frame) lay(rows int) layout {
	key := f.layoutKey(rows)
	l, ok := f.style.memo.layouts[key]
	if !ok {
		if l = f.shared(rows); !l.large && f.scene.count.before != "" {
			whole := f
			whole.scene.count = f.scene.count.folded()
			l = whole.shared(rows)
		}
		f.style.memo.keep(key, l)
	}
	return l.with(f.scene.count)
}

// shared returns the figure as large as leaves room for what is beside it in
// large letters, if need be the less important of it as plain text, and for
// what is said before it.
func (f frame) shared(rows int) layout {
	c, inner := f.scene.count, f.inner()
	before := f.said(rows)
	for plainly := 0; plainly <= len(c.beside); plainly++ {
		for high := rows; high >= 3; high-- {
			font, ok := f.style.inset(c.widest, inner, high)
			if !ok {
				continue
			}
			l := layout{large: true, font: font, gap: gapOf(font), before: before}
			l.left, l.right = f.margins(font)
			l.cells, _ = font.Size(c.widest)
			used := l.cells + l.left + l.right
			if before.cells > 0 {
				used += before.cells + l.gap
			}
			if len(c.beside) == 0 {
				if used <= inner {
					return l
				}
				continue
			}
			if l.side, l.wide, ok = f.column(rows, inner-used-l.gap, plainly, font.Height()*2/3); ok && l.balanced() {
				return l
			}
			if font.Height() < float64(rows)*0.5 && plainly < len(c.beside) {
				break // rather plain text beside a figure that is seen from afar
			}
		}
	}
	return layout{}
}

// balanced reports whether what matters most beside the figure is not dwarfed by
// it.
func (l layout) balanced() bool {
	return !l.side[0].large || l.side[0].font.Height() >= l.font.Height()*2/5
}

// said returns how what is said before the figure is drawn.
func (f frame) said(rows int) lines {
	l := lines{text: f.scene.count.before, rows: 1, cells: safetext.Width(f.scene.count.before)}
	if l.text == "" {
		return l
	}
	if font, ok := f.style.choose(l.text, f.inner()/4, float64(rows)/3); ok && font.Height() >= minLetter {
		l.large, l.font = true, font
		l.cells, l.rows = font.Size(l.text)
	}
	return l
}

// draw draws a text in the middle of a panel of so many cells and rows.
func (l lines) draw(cells, rows int) []string {
	if l.large {
		return l.font.In(l.text, cells, rows)
	}
	return centreRows([]string{safetext.Centre(l.text, cells)}, rows, cells)
}

// roomy is the height of a field from which on what is beside the figure is set
// apart by blank lines.
const roomy = 7

// column stacks what is beside the figure into rows × cols cells, none higher
// than most, the last of it as plain text; ok is false where it does not fit. In
// large letters it keeps off the edges like the figure, and what matters most is
// the largest of it.
func (f frame) column(rows, cols, plainly int, most float64) (side []lines, wide int, ok bool) {
	items := f.scene.count.beside
	large := len(items) - plainly
	room := rows - plainly
	if large > 0 && rows >= roomy {
		room = rows - 2 - plainly - (len(items) - 1)
	}
	for i, it := range items {
		l := lines{text: it.text, rows: 1, large: i < large, cells: safetext.Width(it.widest)}
		if l.large {
			high := float64(room) / float64(large-i)
			if i == 0 && large > 1 {
				high = min(float64(room-3*(large-1)), max(high, float64(room)*3/5))
			}
			if l.font, ok = f.style.choose(it.widest, cols, min(high, most)); !ok || l.font.Height() < minLetter {
				return nil, 0, false
			}
			if i == 0 && large > 1 {
				most = l.font.Height()
			}
			l.cells, l.rows = l.font.Size(it.widest)
			room -= l.rows
		}
		side, wide = append(side, l), max(wide, l.cells)
	}
	return side, wide, wide <= cols && room >= 0
}

// drawSide draws the column beside the figure, rows lines of its width. What is
// last in weight stands first: "of 10" reads on from the figure.
func (l layout) drawSide(rows int) []string {
	n := len(l.side)
	spaced := l.side[0].large && rows >= roomy
	var out []string
	for i := range n {
		t := l.side[(i+n-1)%n]
		if i > 0 && spaced {
			out = append(out, strings.Repeat(" ", l.wide))
		}
		if !t.large {
			out = append(out, safetext.Pad(t.text, l.wide))
			continue
		}
		w, _ := t.font.Size(t.text)
		w = min(w, l.wide)
		for _, row := range t.font.Render(t.text, w) {
			out = append(out, row+strings.Repeat(" ", l.wide-w))
		}
	}
	return centreRows(out, rows, l.wide)
}

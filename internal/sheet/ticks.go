package sheet

import "coldfloor/internal/paper"

// Measures of the boxes to tick, in millimetres.
const (
	boxGap   = 1.3  // between two rounds
	maxTicks = 45.0 // widest column
	minTicks = 15.0
)

// box returns the side of a box: room for a pencil.
func (s *setter) box() float64 { return max(7.5*s.scale, 6.5) }

// ticksWidth returns the width of the column of boxes: that of the widest row,
// within bounds.
func (s *setter) ticksWidth(d *Doc) float64 {
	width := minTicks
	for _, b := range d.Blocks {
		for _, r := range b.Rows {
			w := 2 * padding
			for _, round := range r.Rounds {
				w += s.roundWidth(round) + boxGap
			}
			width = max(width, w-boxGap)
		}
	}
	return min(width, maxTicks)
}

// roundWidth returns the width of the boxes of one round.
func (s *setter) roundWidth(r Round) float64 { return float64(len(r.Boxes)) * s.box() }

// tickLines breaks the rounds into lines that fit into the column.
func (s *setter) tickLines(r *Row) [][]Round {
	var lines [][]Round
	free := 0.0
	for _, round := range r.Rounds {
		w := s.roundWidth(round)
		if len(lines) == 0 || w > free+0.001 {
			lines = append(lines, nil)
			free = s.cols.ticks - 2*padding
		}
		lines[len(lines)-1] = append(lines[len(lines)-1], round)
		free -= w + boxGap
	}
	return lines
}

// tallyLines sets what stands in place of boxes, above an empty space.
func (s *setter) tallyLines(r *Row) []paper.Line {
	return s.types.Wrap(s.small(), r.Tally, s.cols.ticks-2*padding)
}

// ticksHeight returns the height of a row's boxes.
func (s *setter) ticksHeight(r *Row) float64 {
	if r.Tally != "" {
		return paper.HeightOf(s.tallyLines(r)) + 2*s.box()
	}
	n := float64(len(s.tickLines(r)))
	return n*s.box() + (n-1)*boxGap
}

// drawTicks draws a row's boxes in the column at x.
func (s *setter) drawTicks(c paper.Canvas, r *Row, x, y float64) {
	if r.Tally != "" {
		paper.DrawLines(c, s.types, s.tallyLines(r), x+padding, y, s.cols.ticks-2*padding, paper.Centre)
		return
	}
	for _, rounds := range s.tickLines(r) {
		width := -boxGap
		for _, round := range rounds {
			width += s.roundWidth(round) + boxGap
		}
		at := x + (s.cols.ticks-width)/2
		for _, round := range rounds {
			for _, label := range round.Boxes {
				s.drawBox(c, at, y, label)
				at += s.box()
			}
			at += boxGap
		}
		y += s.box() + boxGap
	}
}

// drawBox draws one box with its label in the corner.
func (s *setter) drawBox(c paper.Canvas, x, y float64, label string) {
	f := paper.Face{Size: 6.5}
	c.Area(paper.Box(x, y, s.box(), s.box()), paper.White, 0.3)
	c.Text(paper.Box(x+0.5, y+0.2, s.box()-1, f.Height()), paper.Left, f, label)
}

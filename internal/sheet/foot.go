package sheet

import "strings"

// foot sets what stands below the table.
func (s *setter) foot(d *Doc) {
	t, f := s.types, s.small()
	s.lines(t.wrap(f, join(" ", d.Legend...), s.w), false)
	s.gap(1.5, false)
	s.cautions(d.Cautions)
	s.effort(&d.Effort)
}

// cautions sets what is told for safety behind a heavy bar.
func (s *setter) cautions(cautions []string) {
	const inset = 2.5
	if len(cautions) == 0 {
		return
	}
	lines := s.types.wrap(s.small(), strings.Join(cautions, " "), s.w-inset)
	height := heightOf(lines)
	s.add(height, false, func(c canvas, y float64) {
		c.area(rect{s.x, y + 0.3, 1, height - 0.6}, black, 0)
		drawLines(c, s.types, lines, s.x+inset, y, s.w-inset, left)
	})
	s.gap(1.5, false)
}

// effort sets the effort scale, a box a grade, and lines to write on.
func (s *setter) effort(e *Effort) {
	t, question := s.types, s.strong()
	s.rule(0.7)
	s.lines(t.wrap(question, e.Question, s.w), true)
	s.gap(0.8, true)
	number, words := s.face(true, 13, 11), face{size: 7.5}
	cell := s.w / float64(len(e.Scale))
	grades := make([][]line, len(e.Scale))
	height := 0.0
	for i, g := range e.Scale {
		grades[i] = append([]line{single(number, g.Number)}, t.wrap(words, g.Words, cell-1)...)
		height = max(height, heightOf(grades[i]))
	}
	s.add(height+1, true, func(c canvas, y float64) {
		for i, lines := range grades {
			x := s.x + float64(i)*cell
			c.area(rect{x, y, cell, height + 0.8}, white, 0.2)
			drawLines(c, t, lines, x+0.5, y+0.4, cell-1, centre)
		}
	})
	s.lines(t.wrap(s.small(), e.Source, s.w), true)
	s.blanks(true, e.Blanks...)
	s.blanks(false, e.Pain, "Notes")
}

// blanks sets a line to write on behind each label, kept with what follows.
func (s *setter) blanks(keep bool, labels ...string) {
	f := s.strong()
	cell := s.w / float64(len(labels))
	height := 7.5 * max(s.scale, 0.85)
	s.add(height, keep, func(c canvas, y float64) {
		for i, label := range labels {
			x := s.x + float64(i)*cell
			w := s.types.width(f, label)
			c.text(rect{x, y + height - f.height(), w, f.height()}, left, f, label)
			c.line(x+w+1.5, y+height-0.6, x+cell-2*float64(len(labels)-1), y+height-0.6, 0.15)
		}
	})
}

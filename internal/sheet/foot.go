package sheet

// foot sets what stands below the table.
func (s *setter) foot(d *Doc) {
	t, f := s.types, s.small()
	s.lines(plain(f, t.wrap(f, join("  ", d.Legend...), s.w, 0)), false)
	s.gap(1.5, false)
	s.cautions(d.Cautions)
	s.effort(&d.Effort)
}

// cautions sets each caution behind a heavy bar.
func (s *setter) cautions(cautions []string) {
	const inset = 3.0
	for _, text := range cautions {
		lines := plain(s.body(), s.types.wrap(s.body(), text, s.w-inset, 0))
		height := heightOf(lines)
		s.add(height+0.8, false, func(c canvas, y float64) {
			c.area(rect{s.x, y + 0.4, 1.2, height}, black, 0)
			drawLines(c, s.types, lines, s.x+inset, y+0.4, s.w-inset, left)
		})
	}
	if len(cautions) > 0 {
		s.gap(1.5, false)
	}
}

// effort sets the effort scale, a box a grade, and lines to write on.
func (s *setter) effort(e *Effort) {
	t, question := s.types, s.strong()
	s.rule(0.7)
	s.lines(plain(question, t.wrap(question, e.Question, s.w, 0)), true)
	s.gap(0.8, true)
	number, words := s.face(true, 13, 11), s.face(false, 7.5, 7)
	cell := s.w / float64(len(e.Scale))
	grades := make([][]line, len(e.Scale))
	height := 0.0
	for i, g := range e.Scale {
		grades[i] = append(plain(number, []string{g.Number}), plain(words, t.wrap(words, g.Words, cell-1, 0))...)
		height = max(height, heightOf(grades[i]))
	}
	s.add(height+1, true, func(c canvas, y float64) {
		for i, lines := range grades {
			x := s.x + float64(i)*cell
			c.area(rect{x, y, cell, height + 0.8}, white, 0.2)
			drawLines(c, t, lines, x+0.5, y+0.4, cell-1, centre)
		}
	})
	s.lines(plain(s.small(), t.wrap(s.small(), e.Source, s.w, 0)), true)
	s.blanks("Name", "Date", "Minutes done")
	s.blanks("Notes")
}

// blanks sets a line to write on behind each label.
func (s *setter) blanks(labels ...string) {
	f := s.strong()
	cell := s.w / float64(len(labels))
	height := 7.5 * max(s.scale, 0.85)
	s.add(height, len(labels) > 1, func(c canvas, y float64) {
		for i, label := range labels {
			x := s.x + float64(i)*cell
			w := s.types.width(f, label)
			c.text(rect{x, y + height - f.height(), w, f.height()}, left, f, label)
			c.line(x+w+1.5, y+height-0.6, x+cell-2*float64(len(labels)-1), y+height-0.6, 0.15)
		}
	})
}

package sheet

// table sets the blocks.
func (s *setter) table(d *Doc) {
	s.columnHeads()
	columns := s.bands[len(s.bands)-1:]
	for i := range d.Blocks {
		b := &d.Blocks[i]
		s.again = columns
		s.blockHead(b)
		s.again = append(append([]band(nil), columns...), s.continued(b))
		for j := range b.Rows {
			s.row(&b.Rows[j], j == 0)
		}
		if b.After != (Rest{}) {
			s.after(b.After)
		}
		s.again = columns
		s.gap(2.2, false)
	}
	s.again = nil
}

// columnHeads names the columns.
func (s *setter) columnHeads() {
	f := s.small()
	s.add(f.height()+0.6, true, func(c canvas, y float64) {
		x := s.x
		for _, head := range []struct {
			text  string
			width float64
			align align
		}{{"Exercise, cues, how", s.cols.text, left}, {"Dose of a set", s.cols.dose, centre}, {"Tick", s.cols.ticks, centre}, {"Rest", s.cols.then, centre}} {
			c.text(rect{x + padding, y, head.width - 2*padding, f.height()}, head.align, f, s.types.clip(f, head.text, head.width-2*padding))
			x += head.width
		}
	})
}

// blockHead sets a block's title and what is to be known of it.
func (s *setter) blockHead(b *Block) {
	t, f := s.types, s.face(true, 14, 11)
	s.rule(0.7)
	facts := t.printable(join(" · ", b.Facts...))
	name := t.printable(b.Name())
	if t.width(f, name)+t.width(s.body(), facts)+8 <= s.w {
		s.add(f.height()+0.5, true, func(c canvas, y float64) {
			plain(f, []string{name})[0].draw(c, t, s.x, y, s.w, left)
			y += f.baseline() - s.body().baseline()
			plain(s.body(), []string{facts})[0].draw(c, t, s.x, y, s.w, right)
		})
		return
	}
	fitted, lines := t.fit(f, 11, b.Name(), s.w, 1)
	s.lines(plain(fitted, lines), true)
	s.lines(plain(s.body(), t.wrap(s.body(), facts, s.w, 0)), true)
}

// continued is the head of a block that goes on from the page before.
func (s *setter) continued(b *Block) band {
	const more = ", continued"
	f := s.face(true, 11, 9)
	text := s.types.clip(f, b.Name(), s.w-s.types.width(f, more)) + more
	return band{height: f.height() + 0.5, draw: func(c canvas, y float64) {
		c.line(s.x, y, s.x+s.w, y, 0.7)
		plain(f, []string{text})[0].draw(c, s.types, s.x, y+0.4, s.w, left)
	}}
}

// rule appends a line across the table, kept with what follows.
func (s *setter) rule(width float64) {
	s.add(width+0.6, true, func(c canvas, y float64) { c.line(s.x, y+width/2, s.x+s.w, y+width/2, width) })
}

// row sets an exercise: one band, or several where it is higher than a page.
func (s *setter) row(r *Row, first bool) {
	text := s.rowText(r)
	dose := s.doseLines(r)
	then := s.thenLines(r.Then)
	room := s.height() - heightOfBands(s.again) - 2*padding
	side := max(heightOf(dose), s.ticksHeight(r), heightOf(then))
	for start := true; start || len(text) > 0; start = false {
		n, height := 0, 0.0
		for n < len(text) && (n == 0 || height+text[n].height() <= room) {
			height += text[n].height()
			n++
		}
		lines := text[:n]
		text = text[n:]
		if !start {
			s.add(height+2*padding, false, func(c canvas, y float64) {
				s.cellRules(c, y, height+2*padding, false)
				drawLines(c, s.types, lines, s.x, y+padding, s.cols.text-2*padding, left)
			})
			continue
		}
		height = max(height, side)
		s.add(height+2*padding, false, func(c canvas, y float64) {
			s.cellRules(c, y, height+2*padding, true)
			y += padding
			drawLines(c, s.types, lines, s.x, y, s.cols.text-2*padding, left)
			x := s.x + s.cols.text
			drawLines(c, s.types, dose, x+padding, y, s.cols.dose-2*padding, centre)
			x += s.cols.dose
			s.drawTicks(c, r, x, y)
			x += s.cols.ticks
			drawLines(c, s.types, then, x+padding, y, s.cols.then-2*padding, centre)
		})
	}
}

// cellRules draws the lines around a row's cells.
func (s *setter) cellRules(c canvas, y, height float64, above bool) {
	if above {
		c.line(s.x, y, s.x+s.w, y, 0.15)
	}
	x := s.x + s.cols.text
	for _, w := range []float64{s.cols.dose, s.cols.ticks, 0} {
		c.line(x, y, x, y+height, 0.15)
		x += w
	}
}

// rowText sets name, cues and the longer texts.
func (s *setter) rowText(r *Row) []line {
	t, width := s.types, s.cols.text-2*padding
	size := s.face(true, 14.5, 11)
	hang := t.width(size, r.ID+" ") + 0.5
	f, _ := t.fit(size, 10.5, r.Name, width-hang, 2)
	lines := t.labelled(run{size, t.printable(r.ID)}, f, r.Name, width, hang)
	cue := s.face(true, 10.5, 9)
	lines = append(lines, plain(cue, t.wrap(cue, join(" · ", r.Cues...), width, 0))...)
	for _, n := range r.Notes {
		label := run{s.strong(), n.Label}
		if n.Label != "" {
			label.text += ":"
		}
		lines = append(lines, t.labelled(label, s.body(), n.Text, width, 0)...)
	}
	return lines
}

// doseLines sets the dose large and how it is done below.
func (s *setter) doseLines(r *Row) []line {
	width := s.cols.dose - 2*padding
	lines := s.types.figureLines(r.Dose, 27*s.scale, 14, width)
	for i, d := range r.Details {
		f := s.small()
		if i == 0 {
			f.bold = true
		}
		lines = append(lines, plain(f, s.types.wrap(f, d, width, 0))...)
	}
	return lines
}

// thenLines sets a rest large, and time to change small.
func (s *setter) thenLines(r Rest) []line {
	width := s.cols.then - 2*padding
	if r == (Rest{}) {
		return nil
	}
	if !r.Large {
		return plain(s.small(), s.types.wrap(s.small(), r.Figure.String()+" "+r.Label, width, 0))
	}
	lines := s.types.figureLines(r.Figure, max(restSize, restSize*s.scale), 20, width)
	return append(lines, plain(s.small(), s.types.wrap(s.small(), r.Label, width, 0))...)
}

// after sets the rest between two blocks, all the way across.
func (s *setter) after(r Rest) {
	t, width := s.types, s.cols.then-2*padding
	figure := t.figureLines(r.Figure, max(restSize, restSize*s.scale), 20, width)
	f := s.face(true, 12, 10)
	label := plain(f, t.wrap(f, r.Label, s.w-s.cols.then-2*padding, 0))
	height := max(heightOf(figure), heightOf(label)) + padding
	s.add(height, false, func(c canvas, y float64) {
		c.line(s.x, y, s.x+s.w, y, 0.15)
		c.area(rect{s.x, y + 0.6, 4, height - 1.2}, white, 0.4)
		drawLines(c, t, label, s.x+6, y+(height-heightOf(label))/2, s.w-s.cols.then-2*padding, left)
		drawLines(c, t, figure, s.x+s.w-s.cols.then+padding, y+padding/2, width, centre)
	})
}

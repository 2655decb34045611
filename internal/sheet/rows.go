package sheet

import (
	"unicode"
	"unicode/utf8"
)

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
		s.again = columns
		s.gap(1.8, false)
	}
	s.again = nil
}

// columnHeads names the columns.
func (s *setter) columnHeads() {
	f := s.small()
	s.add(f.height()+0.6, true, func(c canvas, y float64) {
		x := s.x
		for i, width := range []float64{s.cols.text, s.cols.dose, s.cols.ticks, s.cols.then} {
			name := single(f, s.types.clip(f, columnNames[i], width-2*padding))
			if i == 0 {
				name.draw(c, s.types, x, y, width, left)
			} else {
				name.draw(c, s.types, x, y, width, centre)
			}
			x += width
		}
	})
}

// blockHead sets a block's title and what is to be known of it, and the rest
// before it large.
func (s *setter) blockHead(b *Block) {
	t := s.types
	rest := s.thenLines(Rest{Figure: b.Before.Figure, Large: b.Before.Large})
	width := s.w
	label := run{s.small(), b.Before.Label}
	if len(rest) > 0 {
		width -= s.cols.then + t.width(label.face, label.text) + 6
	}
	_, title := t.fit(s.face(true, 15, 12), 10.5, b.Name(), width, 1)
	lines := append(title, t.wrap(s.body(), join(" · ", b.Facts...), width)...)
	s.rule(0.7)
	// The band of the first lines is as high as the rest; the others follow.
	n, height := 0, 0.0
	for n < len(lines) && (n < 2 || height < heightOf(rest)) {
		height += lines[n].height()
		n++
	}
	height = max(height, heightOf(rest))
	s.add(height+0.5, true, func(c canvas, y float64) {
		drawLines(c, t, lines[:n], s.x, y, width, left)
		if len(rest) > 0 {
			x := s.x + s.w - s.cols.then
			line{runs: []run{label}}.draw(c, t, s.x, y+(height-label.face.height())/2, s.w-s.cols.then-1, right)
			drawLines(c, t, rest, x+padding, y+(height-heightOf(rest))/2, s.cols.then-2*padding, centre)
		}
	})
	s.lines(lines[n:], true)
}

// continued is the head of a block that goes on from the page before.
func (s *setter) continued(b *Block) band {
	const more = ", continued"
	f := s.face(true, 11, 9)
	text := s.types.clip(f, b.Name(), s.w-s.types.width(f, more)) + more
	return band{height: f.height() + 0.5, draw: func(c canvas, y float64) {
		c.line(s.x, y, s.x+s.w, y, 0.7)
		single(f, text).draw(c, s.types, s.x, y+0.4, s.w, left)
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
				s.cellRules(c, y, height+2*padding)
				drawLines(c, s.types, lines, s.x, y+padding, s.cols.text-2*padding, left)
			})
			continue
		}
		height = max(height, side)
		s.add(height+2*padding, false, func(c canvas, y float64) {
			s.cellRules(c, y, height+2*padding)
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
func (s *setter) cellRules(c canvas, y, height float64) {
	c.line(s.x, y, s.x+s.w, y, 0.15)
	c.line(s.x, y+height, s.x+s.w, y+height, 0.15)
	x := s.x + s.cols.text
	for _, w := range []float64{s.cols.dose, s.cols.ticks, 0} {
		c.line(x, y, x, y+height, 0.15)
		x += w
	}
}

// rowText sets name, cues and the longer texts.
func (s *setter) rowText(r *Row) []line {
	t, width := s.types, s.cols.text-2*padding
	name := s.face(true, 14.5, 11)
	id := run{name, r.ID}
	hang := t.width(name, r.ID+" ")
	name, _ = t.fit(name, 10, r.Name, width-hang, 2)
	lines := t.flow([]run{id, {name, r.Name}}, width, hang)
	lines = append(lines, t.wrap(s.face(true, 11, 9), join(" · ", r.Cues...), width)...)
	return append(lines, t.flow(s.notes(r.Notes), width, 0)...)
}

// notes sets the longer texts one behind the other, each behind its label.
func (s *setter) notes(notes []Note) []run {
	var runs []run
	for _, n := range notes {
		if n.Label != "" {
			runs = append(runs, run{s.strong(), n.Label + ":"})
		}
		text := n.Text
		if last, _ := utf8.DecodeLastRuneInString(text); !unicode.IsPunct(last) {
			text += "." // tells it from what follows
		}
		runs = append(runs, run{s.body(), text})
	}
	return runs
}

// doseLines sets the dose large and how it is done below.
func (s *setter) doseLines(r *Row) []line {
	width := s.cols.dose - 2*padding
	lines := figureLines(s.types, r.Dose, 27*s.scale, 14, width)
	side := s.small()
	side.bold = true
	details := []run{{side, r.Side}}
	if r.Side != "" && len(r.Details) > 0 {
		details[0].text += ","
	}
	details = append(details, run{s.small(), join(", ", r.Details...)})
	return append(lines, s.types.flow(details, width, 0)...)
}

// thenLines sets a rest large, and time to change small.
func (s *setter) thenLines(r Rest) []line {
	width := s.cols.then - 2*padding
	if r == (Rest{}) {
		return nil
	}
	if !r.Large {
		return s.types.wrap(s.small(), r.Figure.String()+" "+r.Label, width)
	}
	lines := figureLines(s.types, r.Figure, max(restSize, restSize*s.scale), 20, width)
	return append(lines, s.types.wrap(s.small(), r.Label, width)...)
}

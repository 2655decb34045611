package sheet

import (
	"unicode"
	"unicode/utf8"

	"coldfloor/internal/paper"
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
	s.add(f.Height()+0.6, true, func(c paper.Canvas, y float64) {
		x := s.x
		for i, width := range []float64{s.cols.text, s.cols.dose, s.cols.ticks, s.cols.then} {
			name := paper.Single(f, s.types.Clip(f, s.words.Columns[i], width-2*padding))
			if i == 0 {
				name.Draw(c, s.types, x, y, width, paper.Left)
			} else {
				name.Draw(c, s.types, x, y, width, paper.Centre)
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
	label := paper.Text(s.small(), b.Before.Label)
	if len(rest) > 0 {
		width -= s.cols.then + t.Width(label.Face, label.Text) + 6
	}
	_, title := t.Fit(s.face(true, 15, 12), 10.5, b.Name(), width, 1)
	lines := append(title, t.Wrap(s.body(), join(" · ", b.Facts...), width)...)
	s.rule(0.7)
	// The band of the first lines is as high as the rest; the others follow.
	n, height := 0, 0.0
	for n < len(lines) && (n < 2 || height < paper.HeightOf(rest)) {
		height += lines[n].Height()
		n++
	}
	height = max(height, paper.HeightOf(rest))
	s.add(height+0.5, true, func(c paper.Canvas, y float64) {
		paper.DrawLines(c, t, lines[:n], s.x, y, width, paper.Left)
		if len(rest) > 0 {
			x := s.x + s.w - s.cols.then
			paper.Line{Runs: []paper.Run{label}}.Draw(c, t, s.x, y+(height-label.Face.Height())/2, s.w-s.cols.then-1, paper.Right)
			paper.DrawLines(c, t, rest, x+padding, y+(height-paper.HeightOf(rest))/2, s.cols.then-2*padding, paper.Centre)
		}
	})
	s.lines(lines[n:], true)
}

// continued is the head of a block that goes on from the page before.
func (s *setter) continued(b *Block) band {
	more := ", " + s.words.Continued
	f := s.face(true, 11, 9)
	text := s.types.Clip(f, b.Name(), s.w-s.types.Width(f, more)) + more
	return band{height: f.Height() + 0.5, draw: func(c paper.Canvas, y float64) {
		c.Line(s.x, y, s.x+s.w, y, 0.7)
		paper.Single(f, text).Draw(c, s.types, s.x, y+0.4, s.w, paper.Left)
	}}
}

// rule appends a line across the table, kept with what follows.
func (s *setter) rule(width float64) {
	s.add(width+0.6, true, func(c paper.Canvas, y float64) { c.Line(s.x, y+width/2, s.x+s.w, y+width/2, width) })
}

// row sets an exercise: one band, or several if it is higher than a page.
func (s *setter) row(r *Row, first bool) {
	text := s.rowText(r)
	dose := s.doseLines(r)
	then := s.thenLines(r.Then)
	room := s.height() - heightOfBands(s.again) - 2*padding
	side := max(paper.HeightOf(dose), s.ticksHeight(r), paper.HeightOf(then))
	for start := true; start || len(text) > 0; start = false {
		n, height := 0, 0.0
		for n < len(text) && (n == 0 || height+text[n].Height() <= room) {
			height += text[n].Height()
			n++
		}
		lines := text[:n]
		text = text[n:]
		if !start {
			s.add(height+2*padding, false, func(c paper.Canvas, y float64) {
				s.cellRules(c, y, height+2*padding)
				paper.DrawLines(c, s.types, lines, s.x, y+padding, s.cols.text-2*padding, paper.Left)
			})
			continue
		}
		height = max(height, side)
		s.add(height+2*padding, false, func(c paper.Canvas, y float64) {
			s.cellRules(c, y, height+2*padding)
			y += padding
			paper.DrawLines(c, s.types, lines, s.x, y, s.cols.text-2*padding, paper.Left)
			x := s.x + s.cols.text
			paper.DrawLines(c, s.types, dose, x+padding, y, s.cols.dose-2*padding, paper.Centre)
			x += s.cols.dose
			s.drawTicks(c, r, x, y)
			x += s.cols.ticks
			paper.DrawLines(c, s.types, then, x+padding, y, s.cols.then-2*padding, paper.Centre)
		})
	}
}

// cellRules draws the lines around a row's cells.
func (s *setter) cellRules(c paper.Canvas, y, height float64) {
	c.Line(s.x, y, s.x+s.w, y, 0.15)
	c.Line(s.x, y+height, s.x+s.w, y+height, 0.15)
	x := s.x + s.cols.text
	for _, w := range []float64{s.cols.dose, s.cols.ticks, 0} {
		c.Line(x, y, x, y+height, 0.15)
		x += w
	}
}

// rowText sets name, cues and the longer texts.
func (s *setter) rowText(r *Row) []paper.Line {
	t, width := s.types, s.cols.text-2*padding
	name := s.face(true, 14.5, 11)
	id := paper.Text(name, r.ID)
	hang := t.Width(name, r.ID+" ")
	name, _ = t.Fit(name, 10, r.Name, width-hang, 2)
	lines := t.Flow([]paper.Run{id, paper.Text(name, r.Name)}, width, hang)
	lines = append(lines, t.Wrap(s.face(true, 11, 9), join(" · ", r.Cues...), width)...)
	return append(lines, t.Flow(s.notes(r.Notes), width, 0)...)
}

// notes sets the longer texts one behind the other, each behind its label.
func (s *setter) notes(notes []Note) []paper.Run {
	var runs []paper.Run
	for _, n := range notes {
		if n.Label != "" {
			runs = append(runs, paper.Text(s.strong(), n.Label+":"))
		}
		text := n.Text
		if last, _ := utf8.DecodeLastRuneInString(text); !unicode.IsPunct(last) {
			text += "." // tells it from what follows
		}
		runs = append(runs, paper.Text(s.body(), text))
	}
	return runs
}

// doseLines sets the dose large and how it is done below.
func (s *setter) doseLines(r *Row) []paper.Line {
	width := s.cols.dose - 2*padding
	lines := figureLines(s.types, r.Dose, 27*s.scale, 14, width)
	side := s.small()
	side.Bold = true
	details := []paper.Run{paper.Text(side, r.Side)}
	if r.Side != "" && len(r.Details) > 0 {
		details[0].Text += ","
	}
	details = append(details, paper.Text(s.small(), join(", ", r.Details...)))
	return append(lines, s.types.Flow(details, width, 0)...)
}

// thenLines sets a rest large, and time to change small.
func (s *setter) thenLines(r Rest) []paper.Line {
	width := s.cols.then - 2*padding
	if r == (Rest{}) {
		return nil
	}
	if !r.Large {
		return s.types.Wrap(s.small(), r.Figure.String()+" "+r.Label, width)
	}
	lines := figureLines(s.types, r.Figure, max(restSize, restSize*s.scale), 20, width)
	return append(lines, s.types.Wrap(s.small(), r.Label, width)...)
}

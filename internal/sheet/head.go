package sheet

import "coldfloor/internal/plan"

// head sets what stands above the table.
func (s *setter) head(d *Doc) {
	t := s.types
	total := figureLines(t, d.Total, 30*s.scale, 18, s.w/3)[0]
	width := s.w - total.width(t) - 8
	_, title := t.fit(face{bold: true, size: 24 * s.scale}, 15, d.Title, width, 2)
	for i, l := range title {
		height := l.height()
		if i == len(title)-1 {
			height += max(total.height()-heightOf(title), 0)
		}
		s.add(height, true, func(c canvas, y float64) {
			l.draw(c, t, s.x, y, width, left)
			if i == 0 {
				total.draw(c, t, s.x, y, s.w, right)
			}
		})
	}
	s.lines(t.wrap(s.body(), d.About, s.w), true)
	s.gap(1.5, true)
	s.times(d)
	s.gap(1, true)
	s.strip(&d.Strip)
	s.gap(1.5, false)
}

// times sets how much is work, rest and moving, each behind a square as the
// strip is filled, and the dose: beside them where there is room, else below.
func (s *setter) times(d *Doc) {
	const between = 4.0
	f, t := s.strong(), s.types
	square := f.size * 0.75 * point
	var cells []line
	used := 0.0
	for _, time := range d.Times {
		cells = append(cells, line{runs: []run{{f, time.Text}}, indent: square + 1})
		used += cells[len(cells)-1].width(t) + between
	}
	facts := t.printable(join(" · ", d.Facts...))
	beside := used+between+t.width(f, facts) <= s.w
	s.add(f.height(), true, func(c canvas, y float64) {
		x := s.x
		for i, l := range cells {
			c.area(rect{x, y + f.baseline() - square, square, square}, shadeOf(d.Times[i].Kind), 0.2)
			l.draw(c, t, x, y, l.width(t), left)
			x += l.width(t) + between
		}
		if beside {
			single(f, facts).draw(c, t, s.x, y, s.w, right)
		}
	})
	if !beside {
		s.lines(t.wrap(f, facts, s.w), true)
	}
}

// shadeOf returns how a kind of time is filled: work is black, rest is bare.
func shadeOf(k plan.Kind) shade {
	switch k {
	case plan.Work:
		return black
	case plan.Rest:
		return white
	}
	return hatched
}

// strip sets the session as a strip as long as its time, the blocks above it
// and the clock below.
func (s *setter) strip(strip *Strip) {
	f := s.small()
	label := face{bold: true, size: f.size}
	bar := 6 * s.scale
	at := func(fraction float64) float64 { return s.x + fraction*s.w }
	s.add(label.height()+bar+1+f.height(), true, func(c canvas, y float64) {
		for i, b := range strip.Blocks {
			end := 1.0
			if i+1 < len(strip.Blocks) {
				end = strip.Blocks[i+1].From
			}
			s.stripLabel(c, label, b, at(b.From), y, at(end)-at(b.From)-1)
		}
		y += label.height()
		for _, p := range strip.Parts {
			c.area(rect{at(p.From), y, at(p.To) - at(p.From), bar}, shadeOf(p.Kind), 0)
		}
		c.area(rect{s.x, y, s.w, bar}, white, 0.25)
		for _, b := range strip.Blocks {
			c.line(at(b.From), y-1, at(b.From), y, 0.25)
		}
		y += bar
		for _, m := range strip.Marks {
			c.line(at(m.At), y, at(m.At), y+1, 0.25)
			w := s.types.width(f, m.Text)
			x := min(max(at(m.At)-w/2, s.x), s.x+s.w-w)
			c.text(rect{x, y + 1, w, f.height()}, left, f, m.Text)
		}
	})
}

// stripLabel sets a block's number and length over its part of the strip, as
// much of it as there is room for.
func (s *setter) stripLabel(c canvas, f face, b Span, x, y, width float64) {
	for _, text := range []string{"block " + b.Number + ": " + b.Length, b.Number + ": " + b.Length, b.Number} {
		if w := s.types.width(f, text); w <= width {
			c.text(rect{x, y, w, f.height()}, left, f, text)
			return
		}
	}
}

package sheet

import (
	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
)

// head sets what stands above the table.
func (s *setter) head(d *Doc) {
	t := s.types
	total := figureLines(t, d.Total, 30*s.scale, 18, s.w/3)[0]
	width := s.w - total.Width(t) - 8
	_, title := t.Fit(paper.Face{Bold: true, Size: 24 * s.scale}, 15, d.Title, width, 2)
	for i, l := range title {
		height := l.Height()
		if i == len(title)-1 {
			height += max(total.Height()-paper.HeightOf(title), 0)
		}
		s.add(height, true, func(c paper.Canvas, y float64) {
			l.Draw(c, t, s.x, y, width, paper.Left)
			if i == 0 {
				total.Draw(c, t, s.x, y, s.w, paper.Right)
			}
		})
	}
	s.lines(t.Wrap(s.body(), d.About, s.w), true)
	s.gap(1.5, true)
	s.times(d)
	s.gap(1, true)
	s.strip(&d.Strip)
	s.gap(1.5, false)
}

// times sets how much is work, rest and moving, each behind a square as the
// strip is filled, and the dose: beside them if there is room, else below.
func (s *setter) times(d *Doc) {
	const between = 4.0
	f, t := s.strong(), s.types
	square := f.Size * 0.75 * paper.Point
	var cells []paper.Line
	used := 0.0
	for _, time := range d.Times {
		cells = append(cells, paper.Line{Runs: []paper.Run{paper.Text(f, time.Text)}, Indent: square + 1})
		used += cells[len(cells)-1].Width(t) + between
	}
	facts := t.Printable(join(" · ", d.Facts...))
	beside := used+between+t.Width(f, facts) <= s.w
	s.add(f.Height(), true, func(c paper.Canvas, y float64) {
		x := s.x
		for i, l := range cells {
			c.Area(paper.Box(x, y+f.Baseline()-square, square, square), shadeOf(d.Times[i].Kind), 0.2)
			l.Draw(c, t, x, y, l.Width(t), paper.Left)
			x += l.Width(t) + between
		}
		if beside {
			paper.Single(f, facts).Draw(c, t, s.x, y, s.w, paper.Right)
		}
	})
	if !beside {
		s.lines(t.Wrap(f, facts, s.w), true)
	}
}

// shadeOf returns how a kind of time is filled: work is black, rest is bare.
func shadeOf(k plan.Kind) paper.Shade {
	switch k {
	case plan.Work:
		return paper.Black
	case plan.Rest:
		return paper.White
	}
	return paper.Hatched
}

// strip sets the session as a strip as long as its time, the blocks above it
// and the clock below.
func (s *setter) strip(strip *Strip) {
	f := s.small()
	label := paper.Face{Bold: true, Size: f.Size}
	bar := 6 * s.scale
	at := func(fraction float64) float64 { return s.x + fraction*s.w }
	s.add(label.Height()+bar+1+f.Height(), true, func(c paper.Canvas, y float64) {
		for i, b := range strip.Blocks {
			end := 1.0
			if i+1 < len(strip.Blocks) {
				end = strip.Blocks[i+1].From
			}
			s.stripLabel(c, label, b, at(b.From), y, at(end)-at(b.From)-1)
		}
		y += label.Height()
		for _, p := range strip.Parts {
			c.Area(paper.Box(at(p.From), y, at(p.To)-at(p.From), bar), shadeOf(p.Kind), 0)
		}
		c.Area(paper.Box(s.x, y, s.w, bar), paper.White, 0.25)
		for _, b := range strip.Blocks {
			c.Line(at(b.From), y-1, at(b.From), y, 0.25)
		}
		y += bar
		for _, m := range strip.Marks {
			c.Line(at(m.At), y, at(m.At), y+1, 0.25)
			w := s.types.Width(f, m.Text)
			x := min(max(at(m.At)-w/2, s.x), s.x+s.w-w)
			c.Text(paper.Box(x, y+1, w, f.Height()), paper.Left, f, m.Text)
		}
	})
}

// stripLabel sets a block's number and length over its part of the strip, as
// much of it as there is room for.
func (s *setter) stripLabel(c paper.Canvas, f paper.Face, b Span, x, y, width float64) {
	for _, text := range []string{s.words.Block(b.Number, b.Length), b.Number + ": " + b.Length, b.Number} {
		if w := s.types.Width(f, text); w <= width {
			c.Text(paper.Box(x, y, w, f.Height()), paper.Left, f, text)
			return
		}
	}
}

package sheet

import (
	"strings"

	"coldfloor/internal/paper"
)

// foot sets what stands below the table.
func (s *setter) foot(d *Doc) {
	t, f := s.types, s.small()
	s.lines(t.Wrap(f, join(" ", d.Legend...), s.w), false)
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
	lines := s.types.Wrap(s.small(), strings.Join(cautions, " "), s.w-inset)
	height := paper.HeightOf(lines)
	s.add(height, false, func(c paper.Canvas, y float64) {
		c.Area(paper.Box(s.x, y+0.3, 1, height-0.6), paper.Black, 0)
		paper.DrawLines(c, s.types, lines, s.x+inset, y, s.w-inset, paper.Left)
	})
	s.gap(1.5, false)
}

// effort sets the effort scale, a box a grade, and lines to write on.
func (s *setter) effort(e *Effort) {
	t, question := s.types, s.strong()
	s.rule(0.7)
	s.lines(t.Wrap(question, e.Question, s.w), true)
	s.gap(0.8, true)
	number, words := s.face(true, 13, 11), paper.Face{Size: 7.5}
	cell := s.w / float64(len(e.Scale))
	grades := make([][]paper.Line, len(e.Scale))
	height := 0.0
	for i, g := range e.Scale {
		grades[i] = append([]paper.Line{paper.Single(number, g.Number)}, t.Wrap(words, g.Words, cell-1)...)
		height = max(height, paper.HeightOf(grades[i]))
	}
	s.add(height+1, true, func(c paper.Canvas, y float64) {
		for i, lines := range grades {
			x := s.x + float64(i)*cell
			c.Area(paper.Box(x, y, cell, height+0.8), paper.White, 0.2)
			paper.DrawLines(c, t, lines, x+0.5, y+0.4, cell-1, paper.Centre)
		}
	})
	s.lines(t.Wrap(s.small(), e.Source, s.w), true)
	s.blanks(true, e.Blanks...)
	s.blanks(false, e.Pain, s.words.Notes)
}

// blanks sets a line to write on behind each label, kept with what follows.
func (s *setter) blanks(keep bool, labels ...string) {
	f := s.strong()
	cell := s.w / float64(len(labels))
	height := 7.5 * max(s.scale, 0.85)
	s.add(height, keep, func(c paper.Canvas, y float64) {
		for i, label := range labels {
			x := s.x + float64(i)*cell
			w := s.types.Width(f, label)
			c.Text(paper.Box(x, y+height-f.Height(), w, f.Height()), paper.Left, f, label)
			c.Line(x+w+1.5, y+height-0.6, x+cell-2*float64(len(labels)-1), y+height-0.6, 0.15)
		}
	})
}

package sheet

import (
	"io"

	"coldfloor/internal/paper"
	"coldfloor/internal/text"
)

// Front is a page before several sheets: what a player does in a week, and
// what else they have to know.
type Front struct {
	Language *text.Language
	Title    string
	About    string // may be empty
	Rows     []FrontRow
	Sections []Section
}

// FrontRow is one line of the week: when, what, and how much.
type FrontRow struct{ When, What, Dose string }

// Section is a heading and paragraphs.
type Section struct {
	Title      string
	Paragraphs []string
}

// Together writes a front page and the sheets of several sessions as one PDF
// document for the paper, each sheet on pages of its own at a size of its own.
// The same content gives the same bytes.
func Together(w io.Writer, on paper.Size, front *Front, docs []*Doc) (Printed, error) {
	t := paper.NewTypeface()
	c := paper.NewDocument(on, t, t.Printable(front.Title), marker)
	s := front.layOut(t, on)
	pages := s.pages()
	s.print(c, &Doc{Language: front.Language, Title: front.Title}, pages)
	n := len(pages)
	for _, d := range docs {
		s, pages := d.layOut(t, on)
		s.print(c, d, pages)
		n += len(pages)
	}
	return Printed{n, t.Missing()}, c.Write(w)
}

// layOut sets the front page.
func (f *Front) layOut(t *paper.Typeface, on paper.Size) *setter {
	s := &setter{words: &f.Language.Sheet, types: t, paper: on, scale: 1.15, x: margin, w: on.Width - 2*margin}
	_, title := t.Fit(paper.Face{Bold: true, Size: 24}, 15, f.Title, s.w, 3)
	s.lines(title, true)
	s.lines(t.Wrap(s.body(), f.About, s.w), true)
	s.gap(3, true)
	for _, r := range f.Rows {
		s.day(r)
	}
	s.rule(0.4)
	for _, x := range f.Sections {
		s.gap(4, false)
		s.lines(t.Wrap(paper.Face{Bold: true, Size: 13}, x.Title, s.w), true)
		for _, p := range x.Paragraphs {
			s.lines(t.Wrap(s.body(), p, s.w), false)
			s.gap(1.2, false)
		}
	}
	return s
}

// day sets a line of the week, to be read from a step away.
func (s *setter) day(r FrontRow) {
	t := s.types
	when, big, dose := s.w*0.24, paper.Face{Bold: true, Size: 15}, s.body()
	at := t.Wrap(big, r.When, when-3)
	what := append(t.Wrap(big, r.What, s.w-when), t.Wrap(dose, r.Dose, s.w-when)...)
	height := max(paper.HeightOf(at), paper.HeightOf(what))
	s.rule(0.4)
	s.add(height+2, false, func(c paper.Canvas, y float64) {
		paper.DrawLines(c, t, at, s.x, y+1, when-3, paper.Left)
		paper.DrawLines(c, t, what, s.x+when, y+1, s.w-when, paper.Left)
	})
}

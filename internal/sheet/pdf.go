package sheet

import (
	"io"

	"coldfloor/internal/paper"
)

// The scales that are tried, from the largest. One is the size a sheet reads
// best in; a short session may be larger, a long one smaller.
const (
	largest  = 1.4
	smallest = 0.7
	smaller  = 0.05
)

// Printed describes a PDF that was written.
type Printed struct {
	Pages   int
	Missing []rune // characters that the typeface lacks, in order
}

// PDF writes the sheet as a PDF document for the paper. It takes as few pages
// as the smallest type allows, and then the largest type that takes no more.
// The same Doc gives the same bytes.
func (d *Doc) PDF(w io.Writer, on paper.Size) (Printed, error) {
	t := paper.NewTypeface()
	s, pages := d.layOut(t, on)
	c := paper.NewDocument(on, t, t.Printable(d.Title), marker)
	s.print(c, d, pages)
	return Printed{len(pages), t.Missing()}, c.Write(w)
}

// layOut sets the document at the scale that suits the paper.
func (d *Doc) layOut(t *paper.Typeface, on paper.Size) (*setter, [][]band) {
	best, fewest := d.setAt(t, on, smallest)
	for scale := largest; scale > smallest; scale -= smaller {
		if s, pages := d.setAt(t, on, scale); s.fits() && len(pages) <= len(fewest) {
			return s, pages
		}
	}
	return best, fewest
}

// setAt sets the document at one scale.
func (d *Doc) setAt(t *paper.Typeface, on paper.Size, scale float64) (*setter, [][]band) {
	s := newSetter(d, t, on, scale)
	s.head(d)
	s.table(d)
	s.foot(d)
	return s, s.pages()
}

// print draws the pages, each with its number, and lines for notes if the
// last one has room.
func (s *setter) print(c paper.Canvas, d *Doc, pages [][]band) {
	for i, page := range pages {
		c.Page()
		y := margin
		for _, b := range page {
			b.draw(c, y)
			y += b.height
		}
		bottom := margin + s.height()
		if i == len(pages)-1 {
			s.ruled(c, y, bottom)
		}
		s.number(c, d, i+1, len(pages), bottom)
	}
}

// ruled draws lines to write on down to the bottom, a few at the most.
func (s *setter) ruled(c paper.Canvas, y, bottom float64) {
	const gap = 7.5
	for n := 0; n < 8 && y+gap <= bottom; n++ {
		y += gap
		c.Line(s.x, y, s.x+s.w, y, 0.15)
	}
}

// number sets the session's title and the page's number below a page.
func (s *setter) number(c paper.Canvas, d *Doc, page, pages int, y float64) {
	f := paper.Face{Size: 8}
	text := s.words.Page(page, pages)
	w := s.types.Width(f, text)
	y += footing - f.Height()
	c.Text(paper.Box(s.x+s.w-w, y, w, f.Height()), paper.Left, f, text)
	title := s.types.Clip(f, d.Title, s.w-w-8)
	c.Text(paper.Box(s.x, y, s.w-w-8, f.Height()), paper.Left, f, title)
}

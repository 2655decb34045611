package sheet

import (
	"fmt"
	"io"
)

// The scales that are tried, from the largest. One is the size a sheet reads
// best in; a short session may be larger, a long one smaller.
const (
	largest  = 1.4
	smallest = 0.7
	smaller  = 0.05
)

// Printed tells of a PDF that was written.
type Printed struct {
	Pages   int
	Missing []rune // characters that the typeface lacks, in order
}

// PDF writes the sheet as a PDF document for the paper. It takes as few pages
// as the smallest type allows, and then the largest type that takes no more.
// The same Doc gives the same bytes.
func (d *Doc) PDF(w io.Writer, paper Paper) (Printed, error) {
	t := newTypeface()
	s, pages := d.layOut(t, paper)
	c := newPDF(paper, t, t.printable(d.Title), marker)
	s.print(c, d, pages)
	return Printed{len(pages), t.missed()}, c.write(w)
}

// layOut sets the document at the scale that suits the paper.
func (d *Doc) layOut(t *typeface, paper Paper) (*setter, [][]band) {
	best, fewest := d.setAt(t, paper, smallest)
	for scale := largest; scale > smallest; scale -= smaller {
		if s, pages := d.setAt(t, paper, scale); s.fits() && len(pages) <= len(fewest) {
			return s, pages
		}
	}
	return best, fewest
}

// setAt sets the document at one scale.
func (d *Doc) setAt(t *typeface, paper Paper, scale float64) (*setter, [][]band) {
	s := newSetter(d, t, paper, scale)
	s.head(d)
	s.table(d)
	s.foot(d)
	return s, s.pages()
}

// print draws the pages, each with its number, and lines for notes where the
// last one has room.
func (s *setter) print(c canvas, d *Doc, pages [][]band) {
	for i, page := range pages {
		c.page()
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
func (s *setter) ruled(c canvas, y, bottom float64) {
	const gap = 7.5
	for n := 0; n < 8 && y+gap <= bottom; n++ {
		y += gap
		c.line(s.x, y, s.x+s.w, y, 0.15)
	}
}

// number sets the session's title and the page's number below a page.
func (s *setter) number(c canvas, d *Doc, page, pages int, y float64) {
	f := face{size: 8}
	text := fmt.Sprintf("page %d of %d", page, pages)
	w := s.types.width(f, text)
	y += footing - f.height()
	c.text(rect{s.x + s.w - w, y, w, f.height()}, left, f, text)
	title := s.types.clip(f, d.Title, s.w-w-8)
	c.text(rect{s.x, y, s.w - w - 8, f.height()}, left, f, title)
}

package sheet

import (
	"slices"

	"coldfloor/internal/paper"
	"coldfloor/internal/text"
)

// Measures of the page, in millimetres.
const (
	margin  = 10.0
	footing = 5.0 // for the page's number, above the lower margin
	padding = 1.2 // between a rule and the text in its cell
)

// restSize is the smallest size of a rest, in points, unless it is too wide
// for its column: its figures are then 9.5 mm high, at 2 m 16 minutes of arc,
// the least of ISO 9241-3 for comfortable reading (2 × 2 m × tan 8' = 9.31 mm).
const restSize = 37.0

// band is a stretch of the page that is never torn.
type band struct {
	height float64
	keep   bool                            // on one page with the band after it
	draw   func(c paper.Canvas, y float64) // with its top at y
	again  []band                          // what is repeated above the band if a page begins with it
}

// setter lays a document out in bands at one scale.
type setter struct {
	words *text.Sheet
	types *paper.Typeface
	paper paper.Size
	scale float64 // of all text; 1 is the size it reads best in
	x, w  float64 // of the printed width
	cols  columns
	again []band // repeated on a page that begins with the bands set now
	bands []band
}

// columns are the widths of the table's columns.
type columns struct{ text, dose, ticks, then float64 }

// newSetter returns a setter for the document, with its columns as wide as it
// needs.
func newSetter(d *Doc, t *paper.Typeface, on paper.Size, scale float64) *setter {
	s := &setter{words: d.Words(), types: t, paper: on, scale: scale, x: margin, w: on.Width - 2*margin}
	s.cols.dose = 28 * max(scale, 1)
	s.cols.then = 29 * max(scale, 1)
	s.cols.ticks = s.ticksWidth(d)
	s.cols.text = s.w - s.cols.dose - s.cols.ticks - s.cols.then
	return s
}

// face returns a face at the setter's scale, but not below floor points.
func (s *setter) face(bold bool, size, floor float64) paper.Face {
	return paper.Face{Bold: bold, Size: max(size*s.scale, floor)}
}

// The faces of the sheet.
func (s *setter) body() paper.Face   { return s.face(false, 9.5, 7.5) }
func (s *setter) strong() paper.Face { return s.face(true, 9.5, 7.5) }
func (s *setter) small() paper.Face  { return s.face(false, 8, 7) }

// add appends a band.
func (s *setter) add(height float64, keep bool, draw func(c paper.Canvas, y float64)) {
	s.bands = append(s.bands, band{height, keep, draw, s.again})
}

// gap appends empty space.
func (s *setter) gap(height float64, keep bool) {
	s.add(height*s.scale, keep, func(paper.Canvas, float64) {})
}

// lines appends a band for each line, all the way across.
func (s *setter) lines(lines []paper.Line, keep bool) {
	for _, l := range lines {
		s.add(l.Height(), keep, func(c paper.Canvas, y float64) { l.Draw(c, s.types, s.x, y, s.w, paper.Left) })
	}
}

// height returns the room for bands on a page.
func (s *setter) height() float64 { return s.paper.Height - 2*margin - footing }

// heightOfBands returns the height of bands one below the other.
func heightOfBands(bands []band) float64 {
	h := 0.0
	for _, b := range bands {
		h += b.height
	}
	return h
}

// fits reports whether every band fits on a page.
func (s *setter) fits() bool {
	return !slices.ContainsFunc(s.bands, func(b band) bool { return b.height > s.height()-heightOfBands(b.again) })
}

// pages places the bands on pages: a band that is kept with others goes to the
// next page with them if they do not fit and a page can hold them.
func (s *setter) pages() [][]band {
	p := pager{height: s.height()}
	p.next(nil)
	for i := 0; i < len(s.bands); {
		n := s.together(i)
		if need := heightOfBands(s.bands[i : i+n]); need <= p.height-heightOfBands(s.bands[i].again) {
			p.room(need, s.bands[i].again)
		}
		for _, b := range s.bands[i : i+n] {
			p.room(b.height, b.again)
			p.add(b)
		}
		i += n
	}
	return p.pages
}

// pager fills pages, the last of which has room for free millimetres.
type pager struct {
	height, free float64
	pages        [][]band
	empty        bool // nothing is on the last page but what is repeated
}

// next begins a page with what is repeated on it.
func (p *pager) next(again []band) {
	p.pages = append(p.pages, slices.Clone(again))
	p.free = p.height - heightOfBands(again)
	p.empty = true
}

// room begins a page, unless this one is empty or has room for the height.
func (p *pager) room(height float64, again []band) {
	if height > p.free && !p.empty {
		p.next(again)
	}
}

// add puts a band on the page.
func (p *pager) add(b band) {
	last := len(p.pages) - 1
	p.pages[last] = append(p.pages[last], b)
	p.free -= b.height
	p.empty = false
}

// together returns how many bands from i on are kept on one page.
func (s *setter) together(i int) int {
	n := 1
	for s.bands[i+n-1].keep && i+n < len(s.bands) {
		n++
	}
	return n
}

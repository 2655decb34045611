package sheet

import (
	"io"
	"strings"
	"unicode"

	"coldfloor/internal/paper"
)

// wallSize is the smallest size of the sheet for the wall, in points. Its
// capitals and figures are then 9.5 mm high, at 2 m 16 minutes of arc, the least
// of ISO 9241-3 for comfortable reading (2 × 2 m × tan 8' = 9.31 mm).
const wallSize = restSize

// mostWallSize is the largest: more would only break names over more lines.
const mostWallSize = 72.0

// Large writes the sheet as it is read from 2 m, a block a page, in capitals:
// the name of each exercise, its dose, its side and its rest, and nothing else.
// A block that is too long for a page goes on over the next.
func (d *Doc) Large(w io.Writer, on paper.Size) (Printed, error) {
	t := paper.NewTypeface()
	c := paper.NewDocument(on, t, t.Printable(d.Title), marker)
	pages := d.wall(t, on)
	for i, page := range pages {
		c.Page()
		y := margin
		for _, b := range page {
			b.draw(c, y)
			y += b.height
		}
		f := paper.Face{Size: 8}
		foot := paper.Box(margin, on.Height-margin-f.Height(), on.Width-2*margin, f.Height())
		c.Text(foot, paper.Left, f, t.Clip(f, join(" · ", d.Title, d.Words().Page(i+1, len(pages)), d.Words().Elsewhere), foot.W))
	}
	return Printed{len(pages), t.Missing()}, c.Write(w)
}

// wall sets every block on pages of its own, in the largest type in which it
// takes the fewest.
func (d *Doc) wall(t *paper.Typeface, on paper.Size) [][]band {
	var pages [][]band
	for i := range d.Blocks {
		var next Rest
		if i+1 < len(d.Blocks) {
			next = d.Blocks[i+1].Before
		}
		best := wallBlock(t, on, &d.Blocks[i], next, wallSize).pages()
		for size := mostWallSize; size > wallSize; size-- {
			s := wallBlock(t, on, &d.Blocks[i], next, size)
			if p := s.pages(); len(p) <= len(best) && s.whole {
				best = p
				break
			}
		}
		pages = append(pages, best...)
	}
	return pages
}

// wallSetter sets one block at one size.
type wallSetter struct {
	setter
	size  float64
	whole bool // no word is broken
}

// wallBlock sets a block, and the rest that follows it.
func wallBlock(t *paper.Typeface, on paper.Size, b *Block, next Rest, size float64) *wallSetter {
	s := &wallSetter{setter: setter{types: t, paper: on, scale: 1, x: margin, w: on.Width - 2*margin}, size: size, whole: true}
	s.put(true, false, join(", ", b.Name(), b.Rounds))
	for i := range b.Rows {
		r := &b.Rows[i]
		s.wallRule(0.8)
		s.put(true, true, r.ID+" "+r.Name)
		s.put(false, r.Then != (Rest{}), join(" ", r.Dose.String(), r.Side))
		if r.Then != (Rest{}) {
			s.put(r.Then.Large, false, join(" ", r.Then.Figure.String(), r.Then.Label))
		}
	}
	if next != (Rest{}) {
		s.wallRule(2.5)
		s.put(true, false, join(" ", next.Figure.String(), next.Label))
	}
	return s
}

// put sets a text in capitals across the page.
func (s *wallSetter) put(bold, keep bool, text string) {
	f := paper.Face{Bold: bold, Size: s.size}
	text = capitals(text)
	s.whole = s.whole && s.types.Whole(f, text, s.w)
	s.lines(s.types.Wrap(f, text, s.w), keep)
}

// wallRule sets a rule, kept with what is below it.
func (s *wallSetter) wallRule(width float64) {
	s.add(width+2.5, true, func(c paper.Canvas, y float64) { c.Line(s.x, y+1, s.x+s.w, y+1, width) })
}

// capitals returns text in capitals; the sharp s has none in common use but SS.
func capitals(s string) string {
	return strings.Map(unicode.ToUpper, strings.ReplaceAll(s, "ß", "ss"))
}

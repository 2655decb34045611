package report

import (
	"codeberg.org/go-pdf/fpdf"

	"coldfloor/internal/paper"
)

// pointMM is a point in millimetres.
const pointMM = 25.4 / 72

func mm(points float64) float64 { return points * pointMM }

// plate is a surface on a page of a PDF whose unit is the millimetre; x and y
// are where its upper left corner lies.
type plate struct {
	pdf   *fpdf.Fpdf
	types paper.Setting
	x, y  float64
}

// at returns where a point lies on the page.
func (p plate) at(q point) (x, y float64) { return p.x + mm(q.x), p.y + mm(q.y) }

func (p plate) colour(c colour) {
	r, g, b := int(c.r), int(c.g), int(c.b)
	p.pdf.SetFillColor(r, g, b)
	p.pdf.SetDrawColor(r, g, b)
	p.pdf.SetTextColor(r, g, b)
}

// reset gives the page its own colours back.
func (p plate) reset() {
	p.colour(ink)
	p.pdf.SetDashPattern(nil, 0)
}

func (p plate) path(through []point) {
	p.pdf.MoveTo(p.at(through[0]))
	for _, q := range through[1:] {
		p.pdf.LineTo(p.at(q))
	}
}

func (p plate) line(pen pen, through ...point) {
	defer p.reset()
	p.colour(pen.colour)
	p.pdf.SetLineWidth(mm(pen.width))
	if pen.dashed {
		p.pdf.SetDashPattern([]float64{mm(dash[0]), mm(dash[1])}, 0)
	}
	p.path(through)
	p.pdf.DrawPath("D")
}

func (p plate) area(c colour, corners ...point) {
	defer p.reset()
	p.colour(c)
	p.path(corners)
	p.pdf.ClosePath()
	p.pdf.DrawPath("F")
}

func (p plate) disc(c colour, at point, radius, ring float64) {
	defer p.reset()
	p.colour(c)
	x, y := p.at(at)
	if ring > 0 {
		p.pdf.SetFillColor(0xFF, 0xFF, 0xFF)
		p.pdf.SetLineWidth(mm(ring))
		p.pdf.Circle(x, y, mm(radius), "FD")
		return
	}
	p.pdf.Circle(x, y, mm(radius), "F")
}

func (p plate) text(l lettering, at point, s string) {
	weight := ""
	if l.bold {
		weight = "B"
	}
	p.pdf.SetFont(paper.Family, weight, l.size)
	x, y := p.at(at)
	back := p.types.Width(l.bold, l.size, s) * float64(l.at) / 2
	if l.upright {
		p.pdf.TransformBegin()
		p.pdf.TransformRotate(90, x, y)
		defer p.pdf.TransformEnd()
	}
	p.pdf.Text(x-back, y, p.types.Line(s))
}

package report

import (
	"image"
	"image/color"
	"math"

	"codeberg.org/go-pdf/fpdf"
	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"

	"coldfloor/internal/sheet"
)

// vector draws on an area of a PDF page whose unit is the millimetre, y upward
// as charts have it. It is a vg.CanvasSizer.
type vector struct {
	pdf   *fpdf.Fpdf
	types sheet.Setting
	w, h  vg.Length
	pens  []pen
}

// pen is what Push keeps.
type pen struct {
	width  vg.Length
	dashes []vg.Length
	offset vg.Length
	colour color.Color
}

// point is the unit of charts, in millimetres.
const point = 25.4 / 72

// newVector begins to draw on the area whose upper left corner is given, in
// millimetres. It is to be ended.
func newVector(pdf *fpdf.Fpdf, types sheet.Setting, x, y float64, w, h vg.Length) *vector {
	v := &vector{pdf: pdf, types: types, w: w, h: h, pens: []pen{{}}}
	pdf.TransformBegin()
	pdf.TransformTranslate(x, y+mm(h)-pageHeight(pdf))
	vg.Initialize(v)
	return v
}

// end gives the page back as it was.
func (v *vector) end() {
	v.pdf.TransformEnd()
	v.pdf.SetDashPattern(nil, 0)
	v.pdf.SetDrawColor(0, 0, 0)
	v.pdf.SetFillColor(0, 0, 0)
	v.pdf.SetTextColor(0, 0, 0)
}

func pageHeight(pdf *fpdf.Fpdf) float64 {
	_, h := pdf.GetPageSize()
	return h
}

func mm(l vg.Length) float64 { return l.Points() * point }

// at returns where a point lies on the page before all transforms, which work
// about the page's lower left corner.
func (v *vector) at(p vg.Point) (x, y float64) { return mm(p.X), pageHeight(v.pdf) - mm(p.Y) }

func (v *vector) pen() *pen { return &v.pens[len(v.pens)-1] }

// Size implements vg.CanvasSizer.
func (v *vector) Size() (w, h vg.Length) { return v.w, v.h }

// SetLineWidth implements vg.Canvas.
func (v *vector) SetLineWidth(w vg.Length) {
	v.pen().width = w
	v.pdf.SetLineWidth(mm(w))
}

// SetLineDash implements vg.Canvas.
func (v *vector) SetLineDash(dashes []vg.Length, offset vg.Length) {
	v.pen().dashes, v.pen().offset = dashes, offset
	lengths := make([]float64, len(dashes))
	for i, d := range dashes {
		lengths[i] = mm(d)
	}
	v.pdf.SetDashPattern(lengths, mm(offset))
}

// SetColor implements vg.Canvas.
func (v *vector) SetColor(c color.Color) {
	if c == nil {
		c = color.Black
	}
	v.pen().colour = c
	r, g, b, _ := c.RGBA()
	red, green, blue := int(r>>8), int(g>>8), int(b>>8)
	v.pdf.SetFillColor(red, green, blue)
	v.pdf.SetDrawColor(red, green, blue)
	v.pdf.SetTextColor(red, green, blue)
}

// Rotate implements vg.Canvas.
func (v *vector) Rotate(radians float64) {
	x, y := v.at(vg.Point{})
	v.pdf.TransformRotate(radians*180/math.Pi, x, y)
}

// Translate implements vg.Canvas.
func (v *vector) Translate(p vg.Point) { v.pdf.TransformTranslate(mm(p.X), -mm(p.Y)) }

// Scale implements vg.Canvas.
func (v *vector) Scale(x, y float64) {
	left, bottom := v.at(vg.Point{})
	v.pdf.TransformScale(100*x, 100*y, left, bottom)
}

// Push implements vg.Canvas.
func (v *vector) Push() {
	v.pens = append(v.pens, *v.pen())
	v.pdf.TransformBegin()
}

// Pop implements vg.Canvas. The document takes its own state back; the library
// is told, since it keeps a copy.
func (v *vector) Pop() {
	v.pdf.TransformEnd()
	v.pens = v.pens[:len(v.pens)-1]
	p := *v.pen()
	v.SetLineWidth(p.width)
	v.SetLineDash(p.dashes, p.offset)
	v.SetColor(p.colour)
}

// Stroke implements vg.Canvas.
func (v *vector) Stroke(p vg.Path) {
	if v.pen().width > 0 {
		v.path(p, "D")
	}
}

// Fill implements vg.Canvas.
func (v *vector) Fill(p vg.Path) { v.path(p, "F") }

// path draws a path. An arc becomes chords short enough not to be seen.
func (v *vector) path(p vg.Path, style string) {
	for _, part := range p {
		switch part.Type {
		case vg.MoveComp:
			v.pdf.MoveTo(v.at(part.Pos))
		case vg.LineComp:
			v.pdf.LineTo(v.at(part.Pos))
		case vg.ArcComp:
			v.arc(part)
		case vg.CurveComp:
			v.curve(part)
		case vg.CloseComp:
			v.pdf.ClosePath()
		}
	}
	v.pdf.DrawPath(style)
}

func (v *vector) arc(a vg.PathComp) {
	const chords = 24
	for i := range chords + 1 {
		angle := a.Start + a.Angle*float64(i)/chords
		on := vg.Point{X: a.Pos.X + a.Radius*vg.Length(math.Cos(angle)), Y: a.Pos.Y + a.Radius*vg.Length(math.Sin(angle))}
		v.pdf.LineTo(v.at(on))
	}
}

func (v *vector) curve(c vg.PathComp) {
	x, y := v.at(c.Pos)
	cx, cy := v.at(c.Control[0])
	if len(c.Control) == 1 {
		v.pdf.CurveTo(cx, cy, x, y)
		return
	}
	dx, dy := v.at(c.Control[1])
	v.pdf.CurveBezierCubicTo(cx, cy, dx, dy, x, y)
}

// FillString implements vg.Canvas.
func (v *vector) FillString(f font.Face, at vg.Point, text string) {
	if f.Font.Size == 0 {
		return
	}
	weight := ""
	if f.Font.Weight == xfont.WeightBold {
		weight = "B"
	}
	v.pdf.SetFont(sheet.Family, weight, f.Font.Size.Points())
	x, y := v.at(at)
	v.pdf.Text(x, y, v.types.Line(text))
}

// DrawImage implements vg.Canvas. A chart has no image.
func (v *vector) DrawImage(vg.Rectangle, image.Image) {}

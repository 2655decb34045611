// Package paper is what everything printed is set with: the typeface and its
// metrics, the breaking of text into lines, sizes of paper, and the canvas that
// a page is drawn on. All lengths are millimetres, sizes of type points.
package paper

import (
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// Rect is an area of a page, in millimetres from its upper left corner.
type Rect struct{ X, Y, W, H float64 }

// Box returns the area whose upper left corner lies at x and y.
func Box(x, y, w, h float64) Rect { return Rect{x, y, w, h} }

// Align is where text stands in its box.
type Align int

// The ways in which text stands in its box.
const (
	Left Align = iota
	Centre
	Right
)

// Shade fills an area so that black and white print tells it from the others.
type Shade int

// The shades; white is the paper's own.
const (
	White Shade = iota
	Black
	Hatched
)

// Canvas is what is drawn on. All measures are in millimetres.
type Canvas interface {
	// Page begins a page.
	Page()
	// Text sets one line in a box that it fits into.
	Text(b Rect, a Align, f Face, s string)
	// Line draws a line of a width.
	Line(x1, y1, x2, y2, width float64)
	// Area fills an area, with an outline of a width, or 0 for none.
	Area(b Rect, s Shade, outline float64)
}

// Document draws on the pages of a PDF document.
type Document struct {
	pdf   *fpdf.Fpdf
	types *Typeface
}

// NewDocument starts a document. It is the same, byte by byte, for the same
// drawing: its dates are fixed.
func NewDocument(size Size, types *Typeface, title, creator string) *Document {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: size.Width, Ht: size.Height}})
	pdf.SetCatalogSort(true)
	fixed := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	pdf.SetCreationDate(fixed)
	pdf.SetModificationDate(fixed)
	pdf.SetTitle(title, true)
	pdf.SetCreator(creator, false)
	pdf.SetProducer("", false)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	Setting{types}.AddTo(pdf)
	return &Document{pdf, types}
}

// Page implements Canvas.
func (c *Document) Page() { c.pdf.AddPage() }

// Text implements Canvas.
func (c *Document) Text(b Rect, a Align, f Face, s string) {
	style := ""
	if f.Bold {
		style = "B"
	}
	c.pdf.SetFont(Family, style, f.Size)
	x := b.X + (b.W-c.types.Width(f, s))*float64(a)/2
	c.pdf.Text(x, b.Y+f.Baseline(), Visual(s))
}

// Line implements Canvas.
func (c *Document) Line(x1, y1, x2, y2, width float64) {
	c.pdf.SetLineWidth(width)
	c.pdf.Line(x1, y1, x2, y2)
}

// Area implements Canvas.
func (c *Document) Area(b Rect, s Shade, outline float64) {
	switch s {
	case Black:
		c.pdf.SetFillColor(0, 0, 0)
		c.pdf.Rect(b.X, b.Y, b.W, b.H, "F")
	case Hatched:
		c.hatch(b)
	}
	if outline > 0 {
		c.pdf.SetLineWidth(outline)
		c.pdf.Rect(b.X, b.Y, b.W, b.H, "D")
	}
}

// hatch fills an area with slanted lines. They hang together from one area to
// the next, since they are counted from the edge of the page.
func (c *Document) hatch(b Rect) {
	const gap = 0.8
	c.pdf.ClipRect(b.X, b.Y, b.W, b.H, false)
	c.pdf.SetLineWidth(0.18)
	for k := int((b.X - b.H) / gap); float64(k)*gap < b.X+b.W; k++ {
		x := float64(k) * gap
		c.pdf.Line(x, b.Y+b.H, x+b.H, b.Y)
	}
	c.pdf.ClipEnd()
}

// Write ends the document.
func (c *Document) Write(w io.Writer) error { return c.pdf.Output(w) }

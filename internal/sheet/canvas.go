package sheet

import (
	"io"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// rect is an area of a page, in millimetres from its upper left corner.
type rect struct{ x, y, w, h float64 }

// align is where text stands in its box.
type align int

const (
	left align = iota
	centre
	right
)

// shade fills an area so that black and white print tells it from the others.
type shade int

const (
	white shade = iota
	black
	hatched
)

// canvas is what a sheet is drawn on. All measures are in millimetres.
type canvas interface {
	page()
	// text sets one line in a box that it fits into.
	text(b rect, a align, f face, s string)
	line(x1, y1, x2, y2, width float64)
	area(b rect, s shade, outline float64)
}

// pdfCanvas draws on the pages of a PDF document.
type pdfCanvas struct {
	pdf   *fpdf.Fpdf
	types *typeface
}

// newPDF starts a document. It is the same, byte by byte, for the same
// drawing: its dates are fixed.
func newPDF(size Paper, types *typeface, title, creator string) *pdfCanvas {
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
	return &pdfCanvas{pdf, types}
}

func (c *pdfCanvas) page() { c.pdf.AddPage() }

func (c *pdfCanvas) text(b rect, a align, f face, s string) {
	style := ""
	if f.bold {
		style = "B"
	}
	c.pdf.SetFont(Family, style, f.size)
	x := b.x + (b.w-c.types.width(f, s))*float64(a)/2
	c.pdf.Text(x, b.y+f.baseline(), visual(s))
}

func (c *pdfCanvas) line(x1, y1, x2, y2, width float64) {
	c.pdf.SetLineWidth(width)
	c.pdf.Line(x1, y1, x2, y2)
}

func (c *pdfCanvas) area(b rect, s shade, outline float64) {
	switch s {
	case black:
		c.pdf.SetFillColor(0, 0, 0)
		c.pdf.Rect(b.x, b.y, b.w, b.h, "F")
	case hatched:
		c.hatch(b)
	}
	if outline > 0 {
		c.pdf.SetLineWidth(outline)
		c.pdf.Rect(b.x, b.y, b.w, b.h, "D")
	}
}

// hatch fills an area with slanted lines. They hang together from one area to
// the next, since they are counted from the edge of the page.
func (c *pdfCanvas) hatch(b rect) {
	const gap = 0.8
	c.pdf.ClipRect(b.x, b.y, b.w, b.h, false)
	c.pdf.SetLineWidth(0.18)
	for k := int((b.x - b.h) / gap); float64(k)*gap < b.x+b.w; k++ {
		x := float64(k) * gap
		c.pdf.Line(x, b.y+b.h, x+b.h, b.y)
	}
	c.pdf.ClipEnd()
}

// write ends the document.
func (c *pdfCanvas) write(w io.Writer) error { return c.pdf.Output(w) }

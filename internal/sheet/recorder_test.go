package sheet

import (
	"time"

	"codeberg.org/go-pdf/fpdf"

	"coldfloor/internal/paper"
)

func milliseconds(n int) time.Duration { return time.Duration(n) * time.Millisecond }

// recorder is a canvas that keeps what is set on each page.
type recorder struct{ pages [][]set }

// set is one text on a page.
type set struct {
	box  paper.Rect
	face paper.Face
	text string
}

func (r *recorder) Page() { r.pages = append(r.pages, nil) }

func (r *recorder) Text(b paper.Rect, _ paper.Align, f paper.Face, s string) {
	last := len(r.pages) - 1
	r.pages[last] = append(r.pages[last], set{b, f, s})
}

func (r *recorder) Line(_, _, _, _, _ float64) {}

func (r *recorder) Area(_ paper.Rect, _ paper.Shade, _ float64) {}

// record sets a document on a recorder.
func record(d *Doc, on paper.Size) (*recorder, *setter) {
	s, pages := d.layOut(paper.NewTypeface(), on)
	var r recorder
	s.print(&r, d, pages)
	return &r, s
}

// ruler measures with the PDF library and not with what set the text.
func ruler() func(f paper.Face, s string) float64 {
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm"})
	paper.NewSetting().AddTo(pdf)
	return func(f paper.Face, s string) float64 {
		style := ""
		if f.Bold {
			style = "B"
		}
		pdf.SetFont(paper.Family, style, f.Size)
		return pdf.GetStringWidth(s)
	}
}

package sheet

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
)

//go:embed sheet.html
var htmlText string

// htmlTemplate returns the page; what hangs on the paper is set by onPaper. It is
// parsed when it is first asked for: a run has no use for it.
var htmlTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("sheet").Funcs(template.FuncMap{
		"marker":      func() string { return marker },
		"columnClass": func(i int) string { return [...]string{"what", "dose", "ticks", "rest"}[i] },
		"join":        func(texts []string, sep string) string { return strings.Join(texts, sep) },
		"at":          func(fraction float64) string { return fmt.Sprintf("%.2f", fraction*stripWidth) },
		"length":      func(from, to float64) string { return fmt.Sprintf("%.2f", (to-from)*stripWidth) },
		"wide":        func(from, to float64) bool { return (to-from)*stripWidth > 60 },
		"fill":        fillOf,
	}).Funcs(onPaper(1, 1)).Parse(htmlText))
})

// onPaper returns what sizes the page for a printed width in millimetres, at a
// scale: as the PDF is set, so that both take as many pages.
func onPaper(width, scale float64) template.FuncMap {
	return template.FuncMap{
		"percent": func(mm float64) template.CSS { return template.CSS(fmt.Sprintf("%.1f%%", 100*mm/width)) },
		"pt": func(size, floor float64) template.CSS {
			return template.CSS(fmt.Sprintf("%.2fpt", max(size*scale, floor)))
		},
		"mm": func(length float64) template.CSS { return template.CSS(fmt.Sprintf("%.2fmm", length)) },
	}
}

// stripWidth is the width of the strip's drawing in its own units.
const stripWidth = 720.0

// HTML writes the sheet as one HTML page that needs no other file and asks
// nothing of the network. It can be ticked on a screen, where a few lines of
// script keep the ticks, and printed on the paper, in the sizes of the PDF.
func (d *Doc) HTML(w io.Writer, on paper.Size) error {
	s, _ := d.layOut(paper.NewTypeface(), on)
	page, err := htmlTemplate().Clone()
	if err != nil {
		return err
	}
	return page.Funcs(onPaper(s.w, s.scale)).Execute(w, struct {
		*Doc
		Paper   string
		Columns struct{ Text, Dose, Ticks float64 }
	}{d, on.Name, struct{ Text, Dose, Ticks float64 }{s.cols.text, s.cols.dose, s.cols.ticks}})
}

// fillOf returns how a part of the strip is filled: work is full, rest empty.
func fillOf(k plan.Kind) string {
	switch k {
	case plan.Work:
		return "currentColor"
	case plan.Rest:
		return "none"
	}
	return "url(#hatch)"
}

// BoxName says what a box of a row is for, to be read aloud.
func (d *Doc) BoxName(r Row, box string) string {
	round, side := strings.TrimRight(box, "LR"), ""
	switch box[len(round):] {
	case "L":
		side = d.Language.Step.Left
	case "R":
		side = d.Language.Step.Right
	}
	return r.ID + " " + r.Name + ", " + d.Words().Box(round, side)
}

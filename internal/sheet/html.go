package sheet

import (
	_ "embed"
	"fmt"
	"io"
	"strings"

	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"

	"coldfloor/internal/paper"
)

// The looks of the page, in which names in braces stand for what hangs on the
// paper, and the lines that keep its ticks.
var (
	//go:embed sheet.css
	cssText string
	//go:embed sheet.js
	scriptText string
)

// HTML writes the sheet as one HTML page that needs no other file and asks
// nothing of the network. It can be ticked on a screen, where a few lines of
// script keep the ticks, and printed on the paper, in the sizes of the PDF.
func (d *Doc) HTML(w io.Writer, on paper.Size) error {
	s, _ := d.layOut(paper.NewTypeface(), on)
	return h.Doctype(h.HTML(h.Lang(d.Language.Code), line(h.Head(
		line(h.Meta(h.Charset("utf-8"))),
		line(h.Meta(h.Name("viewport"), h.Content("width=device-width, initial-scale=1"))),
		line(h.Meta(h.Name("generator"), h.Content(marker))),
		line(h.Meta(h.Name("color-scheme"), h.Content("light dark"))),
		line(h.TitleEl(g.Text(d.Title))),
		line(h.StyleEl(g.Raw("\n"+s.css(on)))),
	)), d.htmlBody())).Render(w)
}

// css returns the looks of the page on a paper: set as the PDF is, so that both
// take as many pages.
func (s *setter) css(on paper.Size) string {
	percent := func(mm float64) string { return fmt.Sprintf("%.1f%%", 100*mm/s.w) }
	pt := func(size, floor float64) string { return fmt.Sprintf("%.2fpt", max(size*s.scale, floor)) }
	return strings.NewReplacer("{paper}", on.Name,
		"{text}", percent(s.cols.text), "{dose}", percent(s.cols.dose), "{ticks}", percent(s.cols.ticks),
		"{title}", pt(24, 15), "{total}", pt(30, 18), "{name}", pt(14, 11), "{rest}", pt(37, 37), "{dosage}", pt(24, 20),
		"{body}", pt(9.5, 7.5), "{small}", pt(8, 7)).Replace(cssText)
}

// line puts an element on a line of its own in the page's text.
func line(n g.Node) g.Node { return g.Group{n, g.Raw("\n")} }

// foreign is text that may run from right to left.
func foreign(text string) g.Node { return g.Group{g.Attr("dir", "auto"), g.Text(text)} }

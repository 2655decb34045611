package report

import (
	_ "embed"
	"html/template"
	"io"
	"sync"

	"coldfloor/internal/safetext"
)

//go:embed report.html
var htmlText string

// htmlTemplate returns the page. It is parsed when it is first asked for: a run
// has no use for it.
var htmlTemplate = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("report").Funcs(template.FuncMap{
		"marker": func() string { return marker },
		"clean":  func(text string) string { return unbroken(safetext.Clean(text)) },
		"right":  func(t Table, column int) bool { return column < len(t.Right) && t.Right[column] },
		"link":   Table.link,
		"shown": func(c Chart) bool {
			_, _, ok := c.Range()
			return ok
		},
		// The chart is drawn by this package, and what others wrote is not in it.
		"svg": func(c Chart) template.HTML { return template.HTML(c.svg()) },
	}).Parse(htmlText))
})

// link returns the Part that tells more of a row, or nothing.
func (t Table) link(row int) string {
	if row < len(t.Links) {
		return t.Links[row]
	}
	return ""
}

// HTML writes the review as one page that needs no other file and asks nothing
// of the network.
func (d *Doc) HTML(w io.Writer) error { return htmlTemplate().Execute(w, d) }

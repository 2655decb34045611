package report

import (
	_ "embed"
	"io"

	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"

	"coldfloor/internal/safetext"
)

//go:embed report.css
var cssText string

// policy lets the page ask nothing of the network, nor run anything.
const policy = "default-src 'none'; style-src 'unsafe-inline'"

// HTML writes the review as one page that needs no other file and asks nothing
// of the network.
func (d *Doc) HTML(w io.Writer) error {
	return h.Doctype(h.HTML(h.Lang("en"), line(h.Head(
		line(h.Meta(h.Charset("utf-8"))),
		line(h.Meta(h.Name("viewport"), h.Content("width=device-width, initial-scale=1"))),
		line(h.Meta(h.Name("generator"), h.Content(marker))),
		line(h.Meta(g.Attr("http-equiv", "Content-Security-Policy"), h.Content(policy))),
		line(h.TitleEl(clean(d.Title))),
		line(h.StyleEl(g.Raw("\n"+cssText))),
	)), h.Body(h.ID("top"),
		line(h.Header(line(h.H1(foreign(d.Title))), h.P(g.Text(d.About)))),
		h.Main(
			g.Map(d.Parts, func(p Part) g.Node { return line(p.html()) }),
			g.If(len(d.Meaning) > 0, d.htmlMeaning()),
		),
	))).Render(w)
}

// line puts an element on a line of its own in the page's text.
func line(n g.Node) g.Node { return g.Group{n, g.Raw("\n")} }

// clean is what others wrote, such as a name, or figures, none of which is
// broken.
func clean(text string) g.Node { return g.Text(unbroken(safetext.Clean(text))) }

// foreign is what others wrote, which may run from right to left.
func foreign(text string) g.Node { return g.Group{g.Attr("dir", "auto"), clean(text)} }

// html is the squad's table, or one player.
func (p *Part) html() g.Node {
	return h.Section(
		g.If(p.ID != "", g.Group{h.ID(p.ID), h.Class("part")}),
		g.If(p.Title != "", line(g.Group{h.H2(foreign(p.Title)), h.Nav(h.A(h.Href("#top"), g.Text("to the squad")))})),
		g.Map(p.Sections, func(s Section) g.Node { return line(s.html()) }),
	)
}

// htmlMeaning says what was left out, and what the figures can and cannot say.
func (d *Doc) htmlMeaning() g.Node {
	return line(h.Section(h.Class("meaning"),
		line(h.H2(g.Text("What the figures can and cannot say"))),
		g.Map(d.Left, func(left string) g.Node { return line(h.P(g.Text(left))) }),
		h.Dl(g.Map(d.Meaning, func(f Fact) g.Node {
			return line(g.Group{h.Dt(g.Text(f.Name)), h.Dd(g.Map(f.Lines, func(l string) g.Node { return g.Text(l + " ") }))})
		})),
	))
}

package sheet

import (
	"strings"

	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"

	"coldfloor/internal/text"
)

// between stands between facts on one line.
const between = " · "

// htmlBody returns all that is seen of the page.
func (d *Doc) htmlBody() g.Node {
	return h.Body(
		h.Header(
			h.H1(foreign(d.Title)),
			h.Div(h.Class("total"), g.Text(d.Total.Value), unit(d.Total)),
		),
		h.Main(
			given(d.About, func(about string) g.Node { return line(h.P(foreign(about))) }),
			line(h.P(h.Class("times"),
				g.Map(d.Times, func(t Time) g.Node { return line(h.Span(swatch(t.Kind), g.Text(t.Text))) }),
				h.Span(g.Text(strings.Join(d.Facts, between))),
			)),
			line(d.Strip.svg(d.Words().Strip)),
			g.Map(d.Blocks, d.htmlBlock),
			line(h.P(h.Class("legend"), g.Text(strings.Join(d.Legend, " ")))),
			g.If(len(d.Cautions) > 0, d.htmlCautions()),
			line(d.Effort.html(d.Words())),
		),
		h.Script(g.Raw("\n"+scriptText)),
	)
}

// unit is a figure's unit, set small behind it.
func unit(f Figure) g.Node { return h.Small(g.Text(" " + f.Unit)) }

// given is what is made of a text, unless that is empty.
func given(text string, node func(string) g.Node) g.Node {
	if text == "" {
		return nil
	}
	return node(text)
}

func (d *Doc) htmlCautions() g.Node {
	return line(h.Section(h.Class("cautions"),
		line(h.H2(g.Text(d.Words().TakeCare))),
		h.Ul(g.Map(d.Cautions, func(c string) g.Node { return h.Li(g.Text(c)) })),
	))
}

// html asks how hard the session was, and for pain and notes.
func (e *Effort) html(words *text.Sheet) g.Node {
	return h.Section(
		line(h.H2(g.Text(words.Effort))),
		line(h.P(g.Text(e.Question))),
		line(h.Table(h.Class("scale"), h.TBody(h.Tr(g.Map(e.Scale, func(grade Grade) g.Node {
			return h.Td(h.Label(
				h.B(g.Text(grade.Number)),
				given(grade.Words, func(w string) g.Node { return g.Group{g.Text(w), h.Br()} }),
				h.Input(h.Type("radio"), h.Name("effort")),
			))
		}))))),
		line(h.P(h.Class("source"), g.Text(e.Source))),
		line(h.Div(h.Class("blanks"), g.Map(e.Blanks, blank))),
		line(h.Div(h.Class("blanks"), blank(e.Pain))),
		line(h.H2(g.Text(words.Notes))),
		h.Div(h.Class("notes")),
	)
}

// blank is a line to write on, and what for.
func blank(what string) g.Node { return g.Group{g.Text(what + " "), h.Span()} }

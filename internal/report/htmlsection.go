package report

import (
	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"

	"coldfloor/internal/safetext"
)

// html is a section: its facts, charts, table and notes.
func (s *Section) html() g.Node {
	return h.Section(
		g.If(s.Title != "", line(h.H3(foreign(s.Title)))),
		g.If(len(s.Facts) > 0, line(h.Dl(g.Map(s.Facts, func(f Fact) g.Node { return line(f.html()) })))),
		g.If(len(s.Charts) > 0, line(h.Div(h.Class("charts"), g.Map(s.Charts, Chart.html)))),
		g.If(len(s.Table.Rows) > 0, line(h.Div(h.Class("scroll"), h.Role("region"), h.Aria("label", safetext.Clean(s.Title)), h.TabIndex("0"), s.Table.html()))),
		g.Map(s.Notes, func(note string) g.Node { return line(h.P(clean(note))) }),
	)
}

// html is a fact, its lines one below the other.
func (f *Fact) html() g.Node {
	var lines g.Group
	for i, l := range f.Lines {
		if i > 0 {
			lines = append(lines, h.Br())
		}
		lines = append(lines, clean(l))
	}
	return g.Group{h.Dt(foreign(f.Name)), h.Dd(g.Attr("dir", "auto"), lines)}
}

// html is a chart with its note, if it has anything to show. It is drawn by this
// package, and what others wrote is not in it.
func (c Chart) html() g.Node {
	if _, _, ok := c.Range(); !ok {
		return nil
	}
	return line(h.Figure(g.Raw(c.svg()), g.If(c.Note != "", h.FigCaption(g.Text(c.Note)))))
}

// html is a table whose first column heads the rows, with a link to who has a
// part of the page.
func (t *Table) html() g.Node {
	var head, rows g.Group
	for column, name := range t.Header {
		head = append(head, h.Th(g.Attr("scope", "col"), t.side(column), g.Text(name)))
	}
	for i, row := range t.Rows {
		var cells g.Group
		for column, cell := range row {
			switch at := t.link(i); {
			case column > 0:
				cells = append(cells, h.Td(t.side(column), foreign(cell)))
			case at != "":
				cells = append(cells, h.Th(g.Attr("scope", "row"), t.side(column), g.Attr("dir", "auto"), h.A(h.Href("#"+at), clean(cell))))
			default:
				cells = append(cells, h.Th(g.Attr("scope", "row"), t.side(column), foreign(cell)))
			}
		}
		rows = append(rows, line(h.Tr(cells)))
	}
	return h.Table(line(h.THead(h.Tr(head))), line(h.TBody(rows)))
}

// side sets a column of figures to the right.
func (t *Table) side(column int) g.Node {
	return g.If(column < len(t.Right) && t.Right[column], h.Class("figure"))
}

// link returns the Part that tells more of a row, or nothing.
func (t *Table) link(row int) string {
	if row < len(t.Links) {
		return t.Links[row]
	}
	return ""
}

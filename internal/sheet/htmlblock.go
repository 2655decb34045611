package sheet

import (
	"slices"
	"strings"

	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"
)

// htmlBlock is a block: its name, the rest before it, and a table with a row for
// each exercise.
func (d *Doc) htmlBlock(b Block) g.Node {
	columns := slices.Collect(func(yield func(g.Node) bool) {
		for i, name := range d.Words().Columns {
			if !yield(h.Th(g.Attr("scope", "col"), h.Class(columnClasses[i]), g.Text(name))) {
				return
			}
		}
	})
	return line(h.Section(
		line(h.Div(h.Class("head"),
			h.Div(h.H2(foreign(b.Name())), h.P(foreign(strings.Join(b.Facts, between)))),
			g.If(b.Before.Large, h.Div(h.Class("before"), g.Text(b.Before.Label+" "), floorFigure(b.Before.Figure))),
		)),
		line(h.Table(h.Class("plan"),
			line(h.THead(h.Tr(columns...))),
			h.TBody(g.Map(b.Rows, func(r Row) g.Node { return line(d.htmlRow(&r)) })),
		)),
	))
}

// columnClasses are what the columns of a block are called in sheet.css.
var columnClasses = [...]string{"what", "dose", "ticks", "rest"}

// floorFigure is a figure to be read from the floor.
func floorFigure(f Figure) g.Node { return h.Span(h.Class("figure"), g.Text(f.Value), unit(f)) }

// htmlRow is one exercise: what it is, its dose, what is ticked, and the rest.
func (d *Doc) htmlRow(r *Row) g.Node {
	return h.Tr(
		h.Th(g.Attr("scope", "row"), h.Class("what"),
			line(h.Div(h.Class("name"), g.Text(r.ID+" "), h.Span(foreign(r.Name)))),
			g.If(len(r.Cues) > 0, line(h.P(h.Class("cues"), foreign(strings.Join(r.Cues, between))))),
			g.Map(r.Notes, func(n Note) g.Node {
				return line(h.P(g.Attr("dir", "auto"),
					given(n.Label, func(label string) g.Node { return g.Group{h.B(g.Text(label + ":")), g.Text(" ")} }),
					g.Text(n.Text)))
			}),
		),
		h.Td(h.Class("dose"), floorFigure(r.Dose), h.Div(h.Class("details"),
			given(r.Side, func(side string) g.Node { return h.Span(h.B(g.Text(side))) }),
			g.Map(r.Details, func(detail string) g.Node { return h.Span(g.Text(detail)) }),
		)),
		h.Td(
			given(r.Tally, func(tally string) g.Node { return g.Group{g.Text(tally), h.Br(), h.Br()} }),
			g.Map(r.Rounds, func(round Round) g.Node { return line(d.boxes(r, round)) }),
		),
		h.Td(then(r.Then)),
	)
}

// boxes are those to tick in one round.
func (d *Doc) boxes(r *Row, round Round) g.Node {
	return h.Span(h.Class("round"), g.Map(round.Boxes, func(box string) g.Node {
		return h.Label(g.Text(box), h.Input(h.Type("checkbox"), h.Aria("label", d.boxName(r, box))))
	}))
}

// boxName says what a box of a row is for, to be read aloud.
func (d *Doc) boxName(r *Row, box string) string {
	round, side := strings.TrimRight(box, "LR"), ""
	switch box[len(round):] {
	case "L":
		side = d.Language.Step.Left
	case "R":
		side = d.Language.Step.Right
	}
	return r.ID + " " + r.Name + ", " + d.Words().Box(round, side)
}

// then is the rest after an exercise.
func then(r Rest) g.Node {
	switch {
	case r.Large:
		return g.Group{floorFigure(r.Figure), g.Text(r.Label)}
	case r.Label != "":
		return g.Text(r.Figure.String() + " " + r.Label)
	}
	return nil
}

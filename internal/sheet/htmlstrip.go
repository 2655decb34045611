package sheet

import (
	"fmt"

	g "maragu.dev/gomponents"
	h "maragu.dev/gomponents/html"

	"coldfloor/internal/plan"
)

// stripWidth is the width of the strip's drawing in its own units, and wideSpan
// that of a block which has room for its length beside its number.
const (
	stripWidth = 720.0
	wideSpan   = 60
)

// hatching is the pattern of what is neither work nor rest.
const hatching = `<defs><pattern id="hatch" width="3" height="3" patternUnits="userSpaceOnUse"><path d="M-1 1 1-1M0 3 3 0M2 4 4 2" stroke="currentColor" stroke-width=".7"/></pattern></defs>` + "\n"

// svg draws the strip, with a name to be read aloud.
func (s *Strip) svg(name string) g.Node {
	return h.SVG(attrs("class", "strip", "viewBox", "-1 0 722 48", "fill", "currentColor", "font-size", "11", "role", "img", "aria-label", name),
		g.Raw(hatching),
		g.Map(s.Parts, func(p Part) g.Node {
			return line(g.El("rect", attrs("fill", fillOf(p.Kind), "x", at(p.From), "y", "14", "width", at(p.To-p.From), "height", "20")))
		}),
		line(g.El("rect", attrs("fill", "none", "stroke", "currentColor", "x", "0", "y", "14", "width", "720", "height", "20"))),
		g.Map(s.Blocks, func(b Span) g.Node {
			name := b.Number
			if (b.To-b.From)*stripWidth > wideSpan {
				name += ": " + b.Length
			}
			return line(g.Group{tick(b.From, "4", "14"), g.El("text", attrs("x", at(b.From), "dx", "3", "y", "10"), g.Text(name))})
		}),
		g.Map(s.Marks, func(m Mark) g.Node {
			return line(g.Group{tick(m.At, "34", "37"), g.El("text", attrs("x", at(m.At), "y", "46", "text-anchor", anchor(m.At)), g.Text(m.Text))})
		}),
	)
}

// swatch shows how a kind of time is filled in the strip.
func swatch(k plan.Kind) g.Node {
	return h.SVG(attrs("viewBox", "0 0 10 10", "aria-hidden", "true"),
		g.El("rect", attrs("fill", fillOf(k), "stroke", "currentColor", "x", ".5", "y", ".5", "width", "9", "height", "9")))
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

// tick is an upright line at a fraction of the strip.
func tick(fraction float64, from, to string) g.Node {
	return g.El("line", attrs("x1", at(fraction), "y1", from, "x2", at(fraction), "y2", to, "stroke", "currentColor"))
}

// anchor returns which end of a mark's text stands at it, so that none leaves the
// drawing.
func anchor(fraction float64) string {
	switch {
	case fraction == 0:
		return "start"
	case fraction > 0.97:
		return "end"
	}
	return "middle"
}

// at returns a fraction of the strip in the drawing's units.
func at(fraction float64) string { return fmt.Sprintf("%.2f", fraction*stripWidth) }

// attrs are attributes: names and values in turn.
func attrs(pairs ...string) g.Node {
	var all g.Group
	for i := 0; i < len(pairs); i += 2 {
		all = append(all, g.Attr(pairs[i], pairs[i+1]))
	}
	return all
}

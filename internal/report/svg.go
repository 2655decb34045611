package report

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// fonts is what the SVG's text is set in, if the reader has no Liberation
// Sans: faces of the same widths first.
const fonts = "'Liberation Sans',Arial,Helvetica,sans-serif"

// drawing is a surface that becomes an SVG element.
type drawing struct{ b strings.Builder }

// svg returns the chart as an SVG element to stand within a page.
func (c *Chart) svg() string {
	var d drawing
	label := html.EscapeString(c.Describe())
	fmt.Fprintf(&d.b, `<svg viewBox="0 0 %d %d" role="img" aria-label="%s" font-family="%s"><title>%s</title>`, chartWidth, chartHeight, label, fonts, label)
	c.draw(&d)
	d.b.WriteString("</svg>")
	return d.b.String()
}

// number writes a length with at most two decimals.
func number(v float64) string {
	s := strconv.FormatFloat(v, 'f', 2, 64)
	if s = strings.TrimRight(strings.TrimRight(s, "0"), "."); s == "-0" {
		return "0"
	}
	return s
}

// String returns the colour as SVG writes it: #rrggbb.
func (c colour) String() string { return fmt.Sprintf("#%02x%02x%02x", c.r, c.g, c.b) }

func places(through []point) string {
	parts := make([]string, len(through))
	for i, p := range through {
		parts[i] = number(p.x) + "," + number(p.y)
	}
	return strings.Join(parts, " ")
}

func (d *drawing) line(p pen, through ...point) {
	dashes := ""
	if p.dashed {
		dashes = fmt.Sprintf(` stroke-dasharray="%s %s"`, number(dash[0]), number(dash[1]))
	}
	fmt.Fprintf(&d.b, `<polyline points="%s" fill="none" stroke="%v" stroke-width="%s"%s/>`, places(through), p.colour, number(p.width), dashes)
}

func (d *drawing) area(c colour, corners ...point) {
	fmt.Fprintf(&d.b, `<polygon points="%s" fill="%v"/>`, places(corners), c)
}

func (d *drawing) disc(c colour, at point, radius, ring float64) {
	look := fmt.Sprintf(`fill="%v"`, c)
	if ring > 0 {
		look = fmt.Sprintf(`fill="#fff" stroke="%v" stroke-width="%s"`, c, number(ring))
	}
	fmt.Fprintf(&d.b, `<circle cx="%s" cy="%s" r="%s" %s/>`, number(at.x), number(at.y), number(radius), look)
}

func (d *drawing) text(l lettering, at point, s string) {
	look := ""
	if l.bold {
		look = ` font-weight="bold"`
	}
	if l.at != start {
		look += ` text-anchor="` + map[anchor]string{middle: "middle", end: "end"}[l.at] + `"`
	}
	if l.upright {
		look += fmt.Sprintf(` transform="rotate(-90 %s %s)"`, number(at.x), number(at.y))
	}
	fmt.Fprintf(&d.b, `<text x="%s" y="%s" font-size="%s"%s>%s</text>`, number(at.x), number(at.y), number(l.size), look, html.EscapeString(s))
}

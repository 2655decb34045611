package report

import (
	"bytes"
	"fmt"
	"html"
	"strings"

	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgsvg"
)

// fonts is what the SVG's text is set in, where the reader has no Liberation
// Sans: faces of the same widths first.
const fonts = "font-family:'Liberation Sans',Arial,Helvetica,sans-serif"

// svg returns the chart as an SVG element to stand within a page.
func (c *Chart) svg() (string, error) {
	canvas := vgsvg.New(chartWidth, chartHeight)
	c.draw(draw.New(canvas))
	var b bytes.Buffer
	if _, err := canvas.WriteTo(&b); err != nil {
		return "", err
	}
	_, body, ok := strings.Cut(b.String(), "xmlns:xlink")
	if ok {
		_, body, ok = strings.Cut(body, ">")
	}
	if !ok {
		return "", fmt.Errorf("the chart %q came out as no SVG", c.Title)
	}
	body = strings.ReplaceAll(body, "font-family:Liberation Sans", fonts)
	label := html.EscapeString(c.Describe())
	return fmt.Sprintf(`<svg viewBox="0 0 %g %g" role="img" aria-label="%s"><title>%s</title>`,
		chartWidth.Points(), chartHeight.Points(), label, label) + strings.TrimSpace(body), nil
}

package report

import (
	"image/color"
	"slices"
	"strings"

	xfont "golang.org/x/image/font"
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

// The size of a chart on paper, two of which stand side by side on A4.
const (
	chartWidth  = 246 * vg.Length(1) // points
	chartHeight = 150 * vg.Length(1)
)

// Ink of the charts. They are read in black and white: colour tells nothing
// that shape does not.
var (
	ink  = color.Gray{0}
	blue = color.RGBA{0x00, 0x72, 0xB2, 0xFF} // of Okabe and Ito's set, 5.2 : 1 on white
	pale = color.Gray{0xC8}
)

// draw draws the chart on an area.
func (c *Chart) draw(area draw.Canvas) {
	p := plot.New()
	p.BackgroundColor = nil
	p.Title.Text = c.Title
	p.Title.Padding = 4
	p.X.Label.Text, p.Y.Label.Text = c.Time, c.Unit
	p.X.Label.Padding, p.Y.Label.Padding = 2, 4
	p.Title.TextStyle.Font = typeface(9.5, xfont.WeightBold)
	for _, a := range []*plot.Axis{&p.X, &p.Y} {
		a.Label.TextStyle.Font = typeface(8, xfont.WeightNormal)
		a.Tick.Label.Font = typeface(8, xfont.WeightNormal)
		a.LineStyle.Width, a.Tick.LineStyle.Width, a.Tick.Length = 0.6, 0.6, 3
		a.Padding = 0
	}
	low, high, ok := c.Range()
	if !ok {
		low, high = 0, 1
	}
	p.X.Min, p.X.Max = -0.6, float64(len(c.Spots))-0.4
	if c.Kind == Lines {
		p.X.Min, p.X.Max = 0, float64(max(1, len(c.Spots)-1))
	}
	ticks := Scale(low, high, 4)
	p.Y.Min, p.Y.Max = ticks[0], ticks[len(ticks)-1]
	p.Y.Tick.Marker = plot.ConstantTicks(upright(ticks))
	p.X.Tick.Marker = plot.ConstantTicks(c.dates())
	grid := plotter.NewGrid()
	grid.Vertical.Width = 0
	grid.Horizontal = draw.LineStyle{Color: pale, Width: 0.4}
	p.Add(grid, spots{c})
	c.legend(p)
	p.Draw(area)
}

// typeface is the font of the charts.
func typeface(size font.Length, weight xfont.Weight) font.Font {
	return font.Font{Typeface: "Liberation", Variant: "Sans", Size: size, Weight: weight}
}

// upright returns the marks of the upright axis.
func upright(at []float64) []plot.Tick {
	labels := Marks(at)
	ticks := make([]plot.Tick, len(at))
	for i, v := range at {
		ticks[i] = plot.Tick{Value: v, Label: labels[i]}
	}
	return ticks
}

// datesAtMost is how many dates find room below a chart.
const datesAtMost = 4

// dates returns the marks of the time axis: a few dates, evenly apart.
func (c *Chart) dates() []plot.Tick {
	var ticks []plot.Tick
	n := len(c.Spots)
	step := max(1, (n+datesAtMost-1)/datesAtMost)
	for i, s := range c.Spots {
		t := plot.Tick{Value: float64(i)}
		if i%step == 0 {
			t.Label = s.Label
		} else if c.Kind == Lines {
			continue
		}
		ticks = append(ticks, t)
	}
	return ticks
}

// legend tells the lines apart.
func (c *Chart) legend(p *plot.Plot) {
	p.Legend.Top, p.Legend.Left = true, true
	p.Legend.TextStyle.Font = typeface(8, xfont.WeightNormal)
	p.Legend.ThumbnailWidth = 20
	p.Legend.Padding = 2
	for i, n := range c.Names {
		p.Legend.Add(n, &plotter.Line{LineStyle: lineOf(i)})
	}
	if len(c.Names) > 0 { // room for it above the lines
		p.Y.Max += (p.Y.Max - p.Y.Min) * 0.25
	}
}

// lineOf is how the i-th series is drawn: the second one dashed.
func lineOf(i int) draw.LineStyle {
	if i == 0 {
		return draw.LineStyle{Color: blue, Width: 1.2}
	}
	return draw.LineStyle{Color: ink, Width: 1.2, Dashes: []vg.Length{4, 2}}
}

// spots draws the figures of a chart. It is a plot.Plotter.
type spots struct{ *Chart }

// Plot implements plot.Plotter.
func (s spots) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	half := min(x(0.42)-x(0), 9)
	for i, spot := range s.Spots {
		if !spot.Known() {
			continue
		}
		at := x(float64(i))
		switch s.Kind {
		case Columns:
			column(c, at, half, y(0), y(spot.Values[0]), spot.Open)
		case Spans:
			whisker(c, at, min(half, 4), y(spot.Values[0]), y(spot.Values[1]), y(spot.Values[2]), spot.Open)
		}
	}
	if s.Kind == Lines {
		for n := range s.Names {
			var points []vg.Point
			for i, spot := range s.Spots {
				points = append(points, vg.Point{X: x(float64(i)), Y: y(spot.Values[n])})
			}
			c.StrokeLines(lineOf(n), points)
		}
	}
	if p.Y.Min < 0 {
		c.StrokeLine2(draw.LineStyle{Color: ink, Width: 0.6}, c.Min.X, y(0), c.Max.X, y(0))
	}
}

// column draws one column, filled unless it is open.
func column(c draw.Canvas, at, half, from, to vg.Length, open bool) {
	if to-from < 0.4 {
		return
	}
	corners := []vg.Point{{X: at - half, Y: from}, {X: at - half, Y: to}, {X: at + half, Y: to}, {X: at + half, Y: from}}
	if !open {
		c.FillPolygon(blue, corners)
		return
	}
	line := min(0.8, half/2)
	for i := range corners { // within the column's own width
		if i < 2 {
			corners[i].X += line / 2
		} else {
			corners[i].X -= line / 2
		}
	}
	c.StrokeLines(draw.LineStyle{Color: blue, Width: line}, slices.Concat(corners, corners[:1]))
}

// whisker draws a median on the line of its middle half.
func whisker(c draw.Canvas, at, half, low, middle, high vg.Length, open bool) {
	c.StrokeLine2(draw.LineStyle{Color: ink, Width: 0.9}, at, low, at, high)
	var glyph draw.GlyphDrawer = draw.CircleGlyph{}
	if open {
		glyph = draw.RingGlyph{}
	}
	c.DrawGlyph(draw.GlyphStyle{Color: blue, Radius: max(1.2, min(half, 2.6)), Shape: glyph}, vg.Point{X: at, Y: middle})
}

// Describe says in a sentence what a chart shows, for those who do not see it.
func (c *Chart) Describe() string {
	if len(c.Spots) == 0 {
		return c.Title + ", nothing to show"
	}
	first, last := c.Spots[0].Label, c.Spots[len(c.Spots)-1].Label
	low, high, ok := c.Range()
	text := c.Title + " in " + c.Unit + ", " + first + " to " + last
	if ok {
		m := Marks([]float64{low, high})
		text += ", from " + m[0] + " to " + m[1]
	}
	return strings.TrimSpace(text) + "; the figures stand in the table"
}

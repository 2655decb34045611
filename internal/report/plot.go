package report

import "strings"

// The size of a chart on paper, in points, two of which stand side by side on
// A4.
const (
	chartWidth  = 246
	chartHeight = 150
)

// Lettering and lines of a chart, in points.
const (
	headSize  = 9.5
	smallSize = 8.0
	smallCap  = 5.8 // how high capitals and figures are at smallSize
	figureW   = 4.5 // how wide a figure is at smallSize; no mark is wider than its figures
	tickLong  = 3.0
	thin      = 0.6
	thick     = 1.2
)

// frame is where the figures of a chart lie on its surface.
type frame struct {
	left, right, top, bottom float64 // in points
	low, high                float64 // figures at the bottom and at the top
	first, last              float64 // spots at the left and at the right
}

func (f *frame) x(spot float64) float64 {
	return f.left + (spot-f.first)/(f.last-f.first)*(f.right-f.left)
}

func (f *frame) y(v float64) float64 {
	return f.bottom - (v-f.low)/(f.high-f.low)*(f.bottom-f.top)
}

// draw draws the chart on a surface.
func (c *Chart) draw(on surface) {
	low, high, ok := c.Range()
	if !ok {
		low, high = 0, 1
	}
	ticks := Scale(low, high, 4)
	f := c.frame(ticks)
	on.text(lettering{size: headSize, bold: true, at: middle}, point{(f.left + f.right) / 2, headSize}, c.Title)
	on.text(lettering{size: smallSize, at: middle, upright: true}, point{smallSize, (f.top + f.bottom) / 2}, c.Unit)
	on.text(lettering{size: smallSize, at: middle}, point{(f.left + f.right) / 2, chartHeight - 2.5}, c.Time)
	for i, label := range Marks(ticks) {
		y := f.y(ticks[i])
		on.line(pen{pale, 0.4, false}, point{f.left, y}, point{f.right, y})
		on.line(pen{ink, thin, false}, point{f.left - tickLong, y}, point{f.left, y})
		on.text(lettering{size: smallSize, at: end}, point{f.left - tickLong - 2, y + smallCap/2}, label)
	}
	c.dates(on, &f)
	on.line(pen{ink, thin, false}, point{f.left, f.top}, point{f.left, f.bottom})
	on.line(pen{ink, thin, false}, point{f.left, f.bottom}, point{f.right, f.bottom})
	if f.low < 0 {
		on.line(pen{ink, thin, false}, point{f.left, f.y(0)}, point{f.right, f.y(0)})
	}
	c.spots(on, &f)
	c.legend(on, &f)
}

// frame lays the chart out: room on the left for the marks, on the right for
// half of the last date, and above the lines for what tells them apart.
func (c *Chart) frame(ticks []float64) frame {
	widest := 0
	for _, m := range Marks(ticks) {
		widest = max(widest, len(m))
	}
	f := frame{left: smallSize + 6 + figureW*float64(widest) + tickLong, right: chartWidth - 5,
		top: headSize + 9, bottom: chartHeight - 2*smallSize - 9,
		low: ticks[0], high: ticks[len(ticks)-1], first: -0.6, last: float64(len(c.Spots)) - 0.4}
	if c.Kind == Lines {
		f.first, f.last = 0, float64(max(1, len(c.Spots)-1))
	}
	if len(c.Names) > 0 {
		f.high += (f.high - f.low) * 0.25
	}
	if i := c.lastDate(); i >= 0 {
		half := figureW * float64(len(c.Spots[i].Label)) / 2
		if over := f.x(float64(i)) + half - (chartWidth - 1); over > 0 {
			f.right -= over * (f.last - f.first) / (float64(i) - f.first)
		}
	}
	return f
}

// datesAtMost is how many dates find room below a chart.
const datesAtMost = 4

// dateStep is how many spots lie between two dates.
func (c *Chart) dateStep() int { return max(1, (len(c.Spots)+datesAtMost-1)/datesAtMost) }

// lastDate returns the spot that the last date stands below, or -1.
func (c *Chart) lastDate() int {
	if len(c.Spots) == 0 {
		return -1
	}
	return (len(c.Spots) - 1) / c.dateStep() * c.dateStep()
}

// dates marks the time axis: a few dates, evenly apart.
func (c *Chart) dates(on surface, f *frame) {
	for i, s := range c.Spots {
		dated := i%c.dateStep() == 0
		if !dated && c.Kind == Lines {
			continue
		}
		x := f.x(float64(i))
		on.line(pen{ink, thin, false}, point{x, f.bottom}, point{x, f.bottom + tickLong})
		if dated {
			on.text(lettering{size: smallSize, at: middle}, point{x, f.bottom + tickLong + 2 + smallCap}, s.Label)
		}
	}
}

// legend tells the lines apart.
func (c *Chart) legend(on surface, f *frame) {
	for i, n := range c.Names {
		y := f.top + 2 + smallCap + float64(i)*(smallSize+2)
		on.line(lineOf(i), point{f.left + 4, y - smallCap/2}, point{f.left + 24, y - smallCap/2})
		on.text(lettering{size: smallSize}, point{f.left + 28, y}, n)
	}
}

// lineOf is how the i-th series is drawn: the second one dashed.
func lineOf(i int) pen {
	if i == 0 {
		return pen{blue, thick, false}
	}
	return pen{ink, thick, true}
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
	return strings.TrimSpace(text) + "; the figures are in the table"
}

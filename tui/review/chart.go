package review

import (
	"math"
	"slices"
	"strings"

	"github.com/charmbracelet/lipgloss"

	"coldfloor/internal/report"
	"coldfloor/internal/safetext"
)

// chart is a report.Chart drawn in cells.
type chart struct {
	*report.Chart
	style
	cells  cells
	left   int     // the column of the upright axis
	foot   int     // the line of the time axis
	width  int     // of the plot, right of the upright axis
	height int     // of the plot, above the foot of the upright axis
	low    float64 // the ends of the upright axis
	high   float64
	step   int // cells from one spot to the next; of Lines the spots are spread out evenly
	thick  int // cells of a column
}

// chartLines draws a chart in lines of at most width cells: its title with the
// unit, the plot with its axes, what the time axis is, and the note.
func (s style) chartLines(c *report.Chart, width, height int) []string {
	title := s.strong.Render(safetext.Fit(c.Title+", in "+c.Unit, width))
	low, high, ok := c.Range()
	if !ok {
		return []string{title, s.quiet.Render(safetext.Fit("nothing to show yet", width)), ""}
	}
	d := &chart{Chart: c, style: s}
	d.lay(width, max(5, height-2-len(d.below(width))), low, high)
	d.axes()
	d.dates()
	switch c.Kind {
	case report.Columns:
		d.columns()
	case report.Spans:
		d.spans()
	case report.Lines:
		d.lines()
	}
	lines := append([]string{title}, d.cells.lines()...)
	for _, l := range d.below(width) {
		lines = append(lines, s.quiet.Render(l))
	}
	return append(lines, "")
}

// below returns what stands below a chart.
func (d *chart) below(width int) []string {
	text := d.Time
	if n := len(d.Spots); n > 0 {
		text += ", " + d.Spots[0].Label + " to " + d.Spots[n-1].Label
	}
	note := d.Note
	if d.Kind == report.Lines {
		short, long := d.marks()
		note = string(short) + " " + d.Names[0] + "   " + string(long) + " " + d.Names[1]
	}
	note = strings.ReplaceAll(note, "hollow:", string(d.hollow()))
	return append(safetext.Wrap(text, width, 1), safetext.Wrap(note, width, 2)...)
}

// lay shares the cells out; what finds no room falls off at the early end.
func (d *chart) lay(width, height int, low, high float64) {
	d.low, d.high = low, high
	d.height = height - 2
	label := 0
	for _, m := range report.Marks(d.ticks()) {
		label = max(label, len(m))
	}
	d.cells = newCells(width, height)
	d.left, d.foot = label, height-2
	d.width = width - label - 1
	d.step = max(1, min(6, d.width/len(d.Spots)))
	d.thick = max(1, d.step-1)
	most := d.width / d.step
	if d.Kind == report.Lines {
		most = d.width
		if d.fine() {
			most = 2 * d.width // a cell has two dots across
		}
	}
	if more := len(d.Spots) - most; more > 0 {
		cut := *d.Chart
		cut.Spots = d.Spots[more:]
		d.Chart = &cut
	}
}

// ticks returns the figures of the upright axis: round ones between its ends.
func (d *chart) ticks() []float64 {
	ticks := report.Scale(d.low, d.high, max(2, min(5, d.height/2)))
	return slices.DeleteFunc(ticks, func(v float64) bool { return v < d.low || v > d.high })
}

// level returns how many cells above the foot of the axis a figure lies.
func (d *chart) level(v float64) float64 { return (v - d.low) / (d.high - d.low) * float64(d.height) }

// row returns the line that a figure lies on.
func (d *chart) row(v float64) int { return d.foot - int(math.Round(d.level(v))) }

// column returns where the i-th spot begins.
func (d *chart) column(i int) int {
	if d.Kind == report.Lines {
		return d.left + 1 + i*(d.width-1)/max(1, len(d.Spots)-1)
	}
	return d.left + 1 + i*d.step
}

// axes draws both axes, the figures of the upright one, and a line at 0 if
// that is not its foot.
func (d *chart) axes() {
	d.cells.axes(d.left, d.foot, &d.quiet)
	ticks := d.ticks()
	for i, m := range report.Marks(ticks) {
		d.cells.text(d.left-len(m), d.row(ticks[i]), m, &d.plain)
	}
	if d.low < 0 {
		for x := range d.width {
			d.cells.set(d.left+1+x, d.row(0), '·', &d.quiet)
		}
	}
}

// dates writes months and days below the time axis, if there is room.
func (d *chart) dates() {
	free := d.left
	for i, s := range d.Spots {
		if len(s.Label) < 10 {
			continue
		}
		x, text := d.column(i), s.Label[5:]
		if x >= free && x+len(text) <= d.cells.width {
			d.cells.text(x, d.foot+1, text, &d.plain)
			free = x + len(text) + 2
		}
	}
}

// solid and hollow are the characters of a column that is whole, and of one
// that more may come to.
func (d *chart) solid() rune { return d.signs("█", "#")[0] }

func (d *chart) hollow() rune { return d.signs("░", ":")[0] }

func (d *chart) columns() {
	for i, s := range d.Spots {
		if !s.Known() {
			continue
		}
		for x := d.column(i); x < d.column(i)+d.thick; x++ {
			d.bar(x, d.level(s.Values[0]), s.Open)
		}
	}
}

// bar draws one column of cells. What is above 0 can be seen.
func (d *chart) bar(x int, level float64, open bool) {
	foot := d.foot - 1
	if d.fine() && !open {
		if level > 0 {
			level = max(level, 1./8)
		}
		d.cells.pillar(x, foot, level, &d.first)
		return
	}
	char := d.solid()
	if open {
		char = d.hollow()
	}
	full := int(math.Round(level))
	if level > 0 {
		full = max(full, 1)
	}
	for y := range full {
		d.cells.set(x, foot-y, char, &d.first)
	}
}

// spans draws a median on the line of its middle half.
func (d *chart) spans() {
	drawn := d.signs("│●○", "│•○", "|@o")
	line, dot, ring := drawn[0], drawn[1], drawn[2]
	for i, s := range d.Spots {
		if !s.Known() {
			continue
		}
		x := d.column(i) + (d.thick-1)/2
		for y := d.row(s.Values[2]); y <= min(d.row(s.Values[0]), d.foot-1); y++ {
			d.cells.set(x, y, line, &d.first)
		}
		if s.Open {
			dot = ring
		}
		d.cells.set(x, min(d.row(s.Values[1]), d.foot-1), dot, &d.second)
	}
}

// marks returns the characters of the two lines in the legend.
func (d *chart) marks() (first, second rune) {
	if d.fine() {
		return '⠒', '━'
	}
	drawn := d.signs("∙═", "*=")
	return drawn[0], drawn[1]
}

// lines draws the first series in dots, and the second, which moves slower, in
// strokes over them.
func (d *chart) lines() {
	first, second := d.marks()
	if d.fine() {
		d.dots(0, &d.first)
	} else {
		d.strokes(0, first, &d.first)
	}
	d.strokes(1, second, &d.second)
}

// dots draws a series in dots of an eighth of a cell.
func (d *chart) dots(series int, look *lipgloss.Style) {
	drawn := newDots(d.width, d.height)
	place := func(i int) (x, y int) {
		across := float64(i) / float64(max(1, len(d.Spots)-1)) * float64(2*d.width-1)
		up := d.level(d.Spots[i].Values[series]) / float64(d.height) * float64(4*d.height-1)
		return int(math.Round(across)), 4*d.height - 1 - int(math.Round(up))
	}
	for i := range d.Spots {
		x, y := place(max(0, i-1))
		toX, toY := place(i)
		drawn.line(x, y, toX, toY)
	}
	for y := range d.height {
		for x := range d.width {
			if r, ok := drawn.char(x, y); ok {
				d.cells.set(d.left+1+x, y, r, look)
			}
		}
	}
}

// strokes draws a series with one character a column of cells.
func (d *chart) strokes(series int, r rune, look *lipgloss.Style) {
	for x := range d.width {
		i := x * (len(d.Spots) - 1) / max(1, d.width-1)
		y := min(d.row(d.Spots[i].Values[series]), d.foot-1)
		d.cells.set(d.left+1+x, y, r, look)
	}
}

package review

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/report"
	"coldfloor/internal/safetext"
)

// narrow says how a table is made to fit: the column of text that may be cut,
// and the columns that are left out, the first first.
type narrow struct {
	elastic int // or none
	drop    []int
}

// none stands for no elastic column.
const none = -1

// Least width of an elastic column, and the gap between columns, in cells.
const (
	leastElastic = 12
	columnGap    = 2
)

// gap returns the gap between columns in a window of that width.
func gap(width int) int {
	if width < wideTable {
		return 1
	}
	return columnGap
}

// tableLines returns a table's header and rows in lines of at most width cells.
func tableLines(t report.Table, width int, n narrow) (header string, rows []string) {
	widths := make([]int, len(t.Header))
	for c, h := range t.Header {
		widths[c] = safetext.Width(h)
		for _, r := range t.Rows {
			widths[c] = max(widths[c], safetext.Width(r[c]))
		}
	}
	columns := fitColumns(widths, width, n)
	header = rowLine(t, t.Header, columns, widths, gap(width))
	for _, r := range t.Rows {
		rows = append(rows, rowLine(t, r, columns, widths, gap(width)))
	}
	return header, rows
}

// wideTable is the width from which on columns stand two cells apart.
const wideTable = 100

// tableWidth returns how wide a table is in a window of that width, nothing of
// it cut.
func tableWidth(t report.Table, width int) int {
	all := -gap(width)
	for c, h := range t.Header {
		w := safetext.Width(h)
		for _, r := range t.Rows {
			w = max(w, safetext.Width(r[c]))
		}
		all += w + gap(width)
	}
	return all
}

// fitColumns returns the columns that are shown, and makes the elastic one
// narrower if that helps.
func fitColumns(widths []int, width int, n narrow) []int {
	columns := make([]int, len(widths))
	for c := range columns {
		columns[c] = c
	}
	for drop := n.drop; ; drop = drop[1:] {
		over := -width - gap(width)
		for _, c := range columns {
			over += widths[c] + gap(width)
		}
		if over <= 0 {
			return columns
		}
		if slices.Contains(columns, n.elastic) && (widths[n.elastic]-over >= leastElastic || len(drop) == 0) {
			widths[n.elastic] = max(widths[n.elastic]-over, 1)
			return columns
		}
		if len(drop) == 0 {
			return columns // the window cuts what is left
		}
		columns = slices.DeleteFunc(columns, func(c int) bool { return c == drop[0] })
	}
}

// rowLine sets one row.
func rowLine(t report.Table, cells []string, columns, widths []int, gap int) string {
	var parts []string
	for _, c := range columns {
		cell := safetext.Pad(cells[c], widths[c])
		if c < len(t.Right) && t.Right[c] {
			cell = strings.TrimRight(cell, " ")
			cell = strings.Repeat(" ", max(0, widths[c]-safetext.Width(cell))) + cell
		}
		parts = append(parts, cell)
	}
	return strings.TrimRight(strings.Join(parts, strings.Repeat(" ", gap)), " ")
}

// Facts whose names have less than this many cells beside them stand below
// their names.
const leastFact = 40

// factLines returns facts in lines of at most width cells.
func factLines(facts []report.Fact, width int, name func(string) string) []string {
	indent := 0
	for _, f := range facts {
		indent = max(indent, safetext.Width(f.Name)+columnGap)
	}
	below := width-indent < leastFact
	if below {
		indent = columnGap
	}
	var lines []string
	for _, f := range facts {
		head := safetext.Pad(f.Name, indent)
		if below {
			lines = append(lines, name(safetext.Fit(f.Name, width)))
			head = strings.Repeat(" ", indent)
		}
		for _, text := range f.Lines {
			for _, l := range safetext.Wrap(text, width-indent, 40) {
				lines = append(lines, name(head)+l)
				head = strings.Repeat(" ", indent)
			}
		}
	}
	return lines
}

// beside sets the right lines beside the left ones, from that column on.
func beside(left, right []string, column int) []string {
	lines := make([]string, max(len(left), len(right)))
	for i := range lines {
		if i < len(left) {
			lines[i] = left[i]
		}
		if i < len(right) && right[i] != "" {
			lines[i] += strings.Repeat(" ", max(0, column-ansi.StringWidth(lines[i]))) + right[i]
		}
	}
	return lines
}

// Package texttable sets plain text in columns, measured in terminal cells.
package texttable

import (
	"strings"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/safetext"
)

// Table is rows of cells under a header. Cells may come from files: they are
// made safe for the terminal.
type Table struct {
	Header []string
	Right  []bool // columns set to the right, as figures are; may be short
	Rows   [][]string
}

// String returns the table, two spaces between columns and none at the end of
// a line, with a final newline.
func (t Table) String() string {
	lines := make([][]string, 0, 1+len(t.Rows))
	if len(t.Header) > 0 {
		lines = append(lines, cleaned(t.Header))
	}
	for _, row := range t.Rows {
		lines = append(lines, cleaned(row))
	}
	widths := columnWidths(lines)
	var b strings.Builder
	for _, cells := range lines {
		b.WriteString(strings.TrimRight(t.line(cells, widths), " ") + "\n")
	}
	return strings.Trim(b.String(), "\n") + "\n"
}

// cleaned returns the cells made safe for the terminal.
func cleaned(row []string) []string {
	clean := make([]string, len(row))
	for i, cell := range row {
		clean[i] = safetext.Clean(cell)
	}
	return clean
}

// columnWidths returns how wide each column is.
func columnWidths(lines [][]string) []int {
	var widths []int
	for _, cells := range lines {
		for c, cell := range cells {
			if c == len(widths) {
				widths = append(widths, 0)
			}
			widths[c] = max(widths[c], ansi.StringWidth(cell))
		}
	}
	return widths
}

// line sets one line.
func (t Table) line(cells []string, widths []int) string {
	padded := make([]string, len(cells))
	for c, cell := range cells {
		space := strings.Repeat(" ", widths[c]-ansi.StringWidth(cell))
		if c < len(t.Right) && t.Right[c] {
			padded[c] = space + cell
		} else {
			padded[c] = cell + space
		}
	}
	return strings.Join(padded, "  ")
}

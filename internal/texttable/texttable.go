// Package texttable sets plain text in columns, measured in terminal cells.
package texttable

import (
	"strings"

	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/lipgloss/table"

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
	tbl := table.New().Border(lipgloss.HiddenBorder()).
		BorderTop(false).BorderBottom(false).BorderLeft(false).BorderRight(false).BorderColumn(false).BorderHeader(false).
		StyleFunc(t.style)
	header, rows := t.Header, t.Rows
	if len(header) == 0 && len(rows) > 0 { // the library loses the last row of a table without a header
		header, rows = cleaned(rows[0]), rows[1:]
	}
	if len(header) > 0 {
		tbl.Headers(header...)
	}
	for _, row := range rows {
		tbl.Row(cleaned(row)...)
	}
	lines := strings.Split(tbl.Render(), "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Trim(strings.Join(lines, "\n"), "\n") + "\n"
}

// cleaned returns the cells made safe for the terminal.
func cleaned(row []string) []string {
	clean := make([]string, len(row))
	for i, cell := range row {
		clean[i] = safetext.Clean(cell)
	}
	return clean
}

// style pads every column but the first on its left.
func (t Table) style(_, col int) lipgloss.Style {
	s := lipgloss.NewStyle()
	if col > 0 {
		s = s.PaddingLeft(2)
	}
	if col < len(t.Right) && t.Right[col] {
		s = s.Align(lipgloss.Right)
	}
	return s
}

package review

import (
	"math"
	"strings"

	"github.com/charmbracelet/lipgloss"
)

// cell is one cell of a drawing; the zero cell is empty.
type cell struct {
	char rune
	look *lipgloss.Style
}

// cells is a drawing in cells, lines from above. What is set outside of it is
// not seen.
type cells struct {
	width, height int
	at            []cell
}

func newCells(width, height int) cells {
	return cells{width, height, make([]cell, width*height)}
}

// set puts a character of one cell's width.
func (c *cells) set(x, y int, char rune, look *lipgloss.Style) {
	if x >= 0 && x < c.width && y >= 0 && y < c.height {
		c.at[y*c.width+x] = cell{char, look}
	}
}

// text writes ASCII from a cell on to the right.
func (c *cells) text(x, y int, s string, look *lipgloss.Style) {
	for i, r := range s {
		c.set(x+i, y, r, look)
	}
}

// axes draws an upright axis down to the cell and one from it to the right.
func (c *cells) axes(x, y int, look *lipgloss.Style) {
	for row := range y {
		c.set(x, row, '│', look)
	}
	for column := x + 1; column < c.width; column++ {
		c.set(column, y, '─', look)
	}
	c.set(x, y, '└', look)
}

// eighths are the parts of a cell from its foot up, from none to all.
var eighths = []rune(" ▁▂▃▄▅▆▇█")

// pillar draws a column as high as level, in cells, to an eighth of one.
func (c *cells) pillar(x, foot int, level float64, look *lipgloss.Style) {
	for n := int(math.Round(level * 8)); n > 0; n -= 8 {
		c.set(x, foot, eighths[min(n, 8)], look)
		foot--
	}
}

// lines returns the drawing line by line, with no blanks at their ends.
func (c *cells) lines() []string {
	lines := make([]string, c.height)
	for y := range lines {
		lines[y] = renderRow(c.at[y*c.width : (y+1)*c.width])
	}
	return lines
}

// renderRow renders one line, cells of one look together.
func renderRow(row []cell) string {
	for len(row) > 0 && row[len(row)-1].char == 0 {
		row = row[:len(row)-1]
	}
	var b strings.Builder
	for i := 0; i < len(row); {
		j, text := i, ""
		for ; j < len(row) && row[j].look == row[i].look; j++ {
			if row[j].char == 0 {
				text += " "
			} else {
				text += string(row[j].char)
			}
		}
		if row[i].look == nil {
			b.WriteString(text)
		} else {
			b.WriteString(row[i].look.Render(text))
		}
		i = j
	}
	return b.String()
}

package report

// cellPad is the room on each side of a cell's text, in millimetres.
const cellPad = 0.9

// table sets a table over as many pages as it takes, its header on each.
func (p *pages) table(t Table) {
	widths := p.widths(t)
	p.row(t, t.Header, -1, widths)
	for i, row := range t.Rows {
		p.row(t, row, i, widths)
	}
}

// widths returns how wide each column is. If not all fit, the widest ones
// of text give way, and their cells are broken into lines; none gets too narrow
// for what is not to be broken while another can give way.
func (p *pages) widths(t Table) []float64 {
	w, least := make([]float64, len(t.Header)), make([]float64, len(t.Header))
	for c := range w {
		w[c] = p.types.Width(true, tableSize, t.Header[c])
		for _, row := range t.Rows {
			w[c] = max(w[c], p.types.Width(false, tableSize, row[c]))
			least[c] = max(least[c], p.types.Least(false, tableSize, unbroken(row[c])))
		}
		w[c] += 2 * cellPad
		least[c] = min(least[c]+2*cellPad, textWide/4)
	}
	if sum(least) > textWide {
		clear(least)
	}
	for over := sum(w) - textWide; over > 0; over = sum(w) - textWide {
		widest := widestAbove(w, least)
		if widest < 0 {
			break // what is over is a rounding error: the least widths fit
		}
		next := max(2*cellPad, least[widest]) // the width of the next widest, or what no column is below
		for c, x := range w {
			if c != widest && x <= w[widest] {
				next = max(next, x)
			}
		}
		w[widest] = max(w[widest]-max(min(over, w[widest]-next), min(over, 1)), least[widest])
	}
	return w
}

// widestAbove returns the widest of the columns that are wider than their least,
// or -1 if none is.
func widestAbove(w, least []float64) int {
	widest := -1
	for c, x := range w {
		if x > least[c] && (widest < 0 || x > w[widest]) {
			widest = c
		}
	}
	return widest
}

func sum(w []float64) float64 {
	total := 0.0
	for _, x := range w {
		total += x
	}
	return total
}

// row sets one row, or the header for -1. One that is higher than what is left
// of the page begins the next, and one higher than a page goes on over as many
// as it takes.
func (p *pages) row(t Table, cells []string, n int, widths []float64) {
	bold := n < 0
	lines := make([][]string, len(cells))
	most := 1
	for c, cell := range cells {
		lines[c] = p.types.Wrap(bold, tableSize, unbroken(cell), widths[c]-2*cellPad+0.01)
		most = max(most, len(lines[c]))
	}
	if rowHigh(most) > bottom-p.y && n >= 0 {
		p.page()
		p.row(t, t.Header, -1, widths)
	}
	for most > 0 {
		fit := max(1, min(most, int((bottom-p.y-2*cellPad*0.6)/height(tableSize))))
		part := make([][]string, len(lines))
		for c, l := range lines {
			cut := min(fit, len(l))
			part[c], lines[c] = l[:cut], l[cut:]
		}
		p.strip(t, n, part, widths, rowHigh(fit))
		if most -= fit; most > 0 {
			p.page()
			p.row(t, t.Header, -1, widths)
		}
	}
}

// rowHigh is the height of a row of so many lines.
func rowHigh(lines int) float64 { return float64(lines)*height(tableSize) + 2*cellPad*0.6 }

// strip sets the part of a row that stands on one page.
func (p *pages) strip(t Table, n int, lines [][]string, widths []float64, high float64) {
	x := margin
	for c := range lines {
		p.cell(t, c, n < 0, lines[c], x, widths[c], high)
		x += widths[c]
	}
	if n >= 0 && t.link(n) != "" {
		p.pdf.Link(margin, p.y, sum(widths), high, p.link(t.link(n)))
	}
	p.y += high
}

// cell sets one cell.
func (p *pages) cell(t Table, c int, bold bool, lines []string, x, wide, high float64) {
	p.pdf.SetLineWidth(0.15)
	if bold {
		p.pdf.SetFillColor(0xEE, 0xEE, 0xEE)
		p.pdf.Rect(x, p.y, wide, high, "FD")
	} else {
		p.pdf.Rect(x, p.y, wide, high, "D")
	}
	for i, l := range lines {
		at := x + cellPad
		if c < len(t.Right) && t.Right[c] {
			at = x + wide - cellPad - p.types.Width(bold, tableSize, l)
		}
		p.put(bold, tableSize, at, p.y+cellPad*0.6+float64(i)*height(tableSize), l)
	}
}

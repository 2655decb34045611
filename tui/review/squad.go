package review

import (
	"slices"
	"strings"

	"coldfloor/internal/report"
	"coldfloor/internal/review"
)

// sortedBy says how the squad is sorted.
func (m *Model) sortedBy() string {
	by := "trouble first"
	if m.opts.By != review.ByTrouble {
		by = "sorted by " + string(m.opts.By) + ", the worst first"
	}
	if m.opts.By == review.ByName {
		by = "sorted by name"
	}
	if m.opts.Reverse {
		by += ", reversed"
	}
	return by + "; " + report.Mark + " to look at"
}

// usual is the width of a usual window, in which a squad shows every column.
const usual = 80

// squadPage is a line a player.
func (m *Model) squadPage() page {
	width := m.width - len(cursorMark)
	t, elastic, apart := report.SquadTable(m.opts.Squad), none, strings.Repeat(" ", gap(width))
	if tableWidth(t, width) > width {
		t = report.SquadNarrow(m.opts.Squad)
		elastic, apart = len(t.Header)-1, " " // no cell that can be marked has a space in it
	}
	above, below := splitHeader(t)
	heads := [][]string{below}
	if slices.ContainsFunc(above, func(s string) bool { return s != "" }) {
		heads = [][]string{above, below}
	}
	t.Header = below
	t.Rows = append(heads, t.Rows...)
	n := narrow{elastic: elastic}
	if m.width < usual && elastic != none {
		n.drop = []int{6, 5, 4, 7, 8, 2}
	}
	_, rows := tableLines(t, width, n)
	p := page{fixed: len(heads), selected: len(heads) + m.player}
	for _, h := range rows[:len(heads)] {
		p.lines = append(p.lines, m.style.strong.Render(blankMark+h))
	}
	for i, r := range rows[len(heads):] {
		p.lines = append(p.lines, m.row(r, apart, i == m.player))
	}
	return p
}

// splitHeader returns the upper and the lower line of a table's header.
func splitHeader(t report.Table) (above, below []string) {
	for _, h := range t.Header {
		up, low, two := strings.Cut(h, "\n")
		if !two {
			up, low = "", h
		}
		above, below = append(above, up), append(below, low)
	}
	return above, below
}

// The mark of the line that the cursor is on, and of all others.
const (
	cursorMark = "> "
	blankMark  = "  "
)

// row draws a line that the cursor can be on. Marked figures stand out; apart is
// what lies between two cells at least.
func (m *Model) row(text, apart string, on bool) string {
	if on {
		return m.style.strong.Reverse(true).Render(cursorMark + text)
	}
	var b strings.Builder
	b.WriteString(blankMark)
	for text != "" {
		end := strings.Index(text, report.Mark)
		if end < 0 {
			b.WriteString(m.style.plain.Render(text))
			break
		}
		from := max(0, strings.LastIndex(text[:end], apart))
		for text[from] == ' ' {
			from++
		}
		b.WriteString(m.style.plain.Render(text[:from]) + m.style.marked.Render(text[from:end+1]))
		text = text[end+1:]
	}
	return b.String()
}

// sessionRow draws a session's line; one with pain stands out.
func (m *Model) sessionRow(text string, on, pain bool) string {
	switch {
	case on:
		return m.row(text, " ", on)
	case pain:
		return blankMark + m.style.strong.Render(text)
	}
	return blankMark + m.style.plain.Render(text)
}

package report

import (
	"strings"
	"testing"

	"coldfloor/internal/paper"
)

func TestUnbroken(t *testing.T) {
	for text, want := range map[string]string{
		"24 of 60 (40 %)!":                      "24~of~60~(40~%)!",
		"rests cut short 24 of 60 (40 %) in 14": "rests cut short 24~of~60~(40~%) in 14",
		"3 of 6, 1 missed":                      "3~of~6, 1 missed",
		"0.7 s, 10 min, 2 sessions, +1.5 s":     "0.7~s, 10~min, 2 sessions, +1.5~s",
		"one of 3":                              "one of 3",
	} {
		if got := strings.ReplaceAll(unbroken(text), "\u00a0", "~"); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// TestFiguresStayWhole sets a table that is too wide for the page: its columns of
// text give way, and no figure is broken.
func TestFiguresStayWhole(t *testing.T) {
	p := &pages{types: paper.NewSetting()}
	words := strings.Repeat("a long sentence of words ", 6)
	table := Table{Header: []string{"player", "rests cut short", "pain", "before", "a", "b"},
		Rows: [][]string{{words, "24 of 60 (40 %)!", words, "124 of 260 (48 %)", words, words}}}
	widths := p.widths(table)
	if sum(widths) > textWide+0.1 {
		t.Errorf("the table is %v mm wide", sum(widths))
	}
	for c, want := range map[int]string{1: "24\u00a0of\u00a060\u00a0(40\u00a0%)!", 3: "124\u00a0of\u00a0260\u00a0(48\u00a0%)"} {
		lines := p.types.Wrap(false, tableSize, unbroken(table.Rows[0][c]), widths[c]-2*cellPad+0.01)
		if len(lines) != 1 || lines[0] != want {
			t.Errorf("%q in %v mm, want %q", lines, widths[c], want)
		}
	}
}

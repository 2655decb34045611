package report

import (
	"math"
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

// TestFiguresStayWholeOnPages looks for a figure with spaces that may break.
func TestFiguresStayWholeOnPages(t *testing.T) {
	d := Doc{Parts: []Part{{Sections: []Section{{Facts: []Fact{{"rests", []string{"cut short 24 of 60 (40 %)"}}}}}}}}
	var page strings.Builder
	if err := d.HTML(&page); err != nil || !strings.Contains(page.String(), "24\u00a0of\u00a060\u00a0(40\u00a0%)") {
		t.Errorf("%v\n%s", err, page.String())
	}
}

// TestEqualColumnsStayEqual sets a table whose two columns of text are alike: both
// give way by as much.
func TestEqualColumnsStayEqual(t *testing.T) {
	p := &pages{types: paper.NewSetting()}
	words := strings.Repeat("word ", 20)
	table := Table{Header: []string{"a", "b", "c"}, Rows: [][]string{{words, words, "word word"}}}
	if w := p.widths(table); math.Abs(w[0]-w[1]) > 1 {
		t.Errorf("they are %v mm wide", w)
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

package texttable

import "testing"

func TestTable(t *testing.T) {
	got := Table{
		Header: []string{"block", "sets", "note"},
		Right:  []bool{false, true},
		Rows:   [][]string{{"Up", "12", "x"}, {"跳", "3", ""}, {"a\x1b[31mb", "1", "y"}},
	}.String()
	want := "" +
		"block    sets  note\n" +
		"Up         12  x\n" +
		"跳          3\n" +
		"a�[31mb     1  y\n"
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func TestTableWithoutHeaderKeepsEveryRow(t *testing.T) {
	for n := 1; n < 5; n++ {
		var table Table
		want := ""
		for i := range n {
			table.Rows = append(table.Rows, []string{"a", string(rune('0' + i))})
			want += "a  " + string(rune('0'+i)) + "\n"
		}
		if got := table.String(); got != want {
			t.Errorf("%d rows: %q, want %q", n, got, want)
		}
	}
}

// A cell that ends in a mark of its own width stays on its line.
func TestTableKeepsMarksOnTheirLine(t *testing.T) {
	if got, want := (Table{Header: []string{"player"}, Rows: [][]string{{"AAAAAAAAः"}}}).String(), "player\nAAAAAAAAः\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

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

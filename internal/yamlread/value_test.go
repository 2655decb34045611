package yamlread

import (
	"errors"
	"fmt"
	"strings"
	"testing"
)

// valueOf returns the value of the key a in a file of that one value.
func valueOf(t *testing.T, text string) (*File, Value) {
	t.Helper()
	f, m := Parse("f", []byte("a: "+text+"\n"), "a")
	if m == nil {
		t.Fatal(f.Err())
	}
	v, ok := m.Value("a")
	if !ok {
		t.Fatalf("%s is no value", text)
	}
	return f, v
}

// One thing or a list of them, a text or a mapping: what a value is, and what
// is read from it.
func TestValueOfAnyShape(t *testing.T) {
	for text, want := range map[string]string{
		"word":           `word "word" 1 item`,
		"7":              `7 "7" 1 item`,
		"[one, two]":     `list "" a list 2 items`,
		"{b: 1}":         `mapping "" a mapping 1 item`,
		"2026-12-07":     `2026-12-07 "2026-12-07" 1 item`,
		"\n  - one":      `list "" a list 1 item`,
		"&x [one, more]": `list "" a list 2 items`,
	} {
		f, v := valueOf(t, text)
		got := v.Word()
		switch {
		case v.IsList():
			got = `list "` + got + `"`
		case v.IsMapping():
			got = `mapping "` + got + `"`
		}
		items := "1 item"
		if n := len(v.OneOrMore(9)); n != 1 {
			items = fmt.Sprint(n, " items")
		}
		if got += " " + v.Quoted() + " " + items; got != want || f.Err() != nil {
			t.Errorf("%s: %s, %v; want %s", text, got, f.Err(), want)
		}
	}
}

func TestPairs(t *testing.T) {
	f, v := valueOf(t, "{mon: rest, tue: [hops], wed: {b: 5}}")
	var got []string
	for _, p := range v.Pairs(7, "") {
		got = append(got, fmt.Sprint(p.Key.Word(), " ", p.Key.Pos(), ": ", p.Value.Quoted()))
	}
	want := `mon {1 5}: "rest", tue {1 16}: a list, wed {1 29}: a mapping`
	if strings.Join(got, ", ") != want || f.Err() != nil {
		t.Errorf("%q, %v", got, f.Err())
	}
	m := v.Pairs(7, "")[2].Value.Mapping("b")
	if m.Int("b", 1, 9, 0) != 5 || m.Plain("b") != "5" || m.Plain("c") != "" {
		t.Error("the mapping in it is not read")
	}
}

func TestWrongShapes(t *testing.T) {
	for _, c := range []struct {
		value string
		read  func(v Value)
		want  string
	}{
		{"word", func(v Value) { v.Items(2) }, `1:4: "a" must be a list, not the text "word"`},
		{"[]", func(v Value) { v.OneOrMore(2) }, `1:4: "a" is an empty list`},
		{"[1, 2, 3]", func(v Value) { v.OneOrMore(2) }, `1:4: "a" is a list of 3, at most 2`},
		{"[1]", func(v Value) { v.Pairs(2, "write mon: NAME") }, `1:4: "a" must be a mapping, not a list` + "\nhint: write mon: NAME"},
		{"{}", func(v Value) { v.Pairs(2, "") }, `1:4: "a" is empty`},
		{"{x: 1, y: 2, z: 3}", func(v Value) { v.Pairs(2, "") }, `1:4: "a" has 3 keys, at most 2`},
		{"{[x]: 1}", func(v Value) { v.Pairs(2, "") }, `1:5: a key must be a word, not a list`},
		{"{x: }", func(v Value) { v.Pairs(2, "") }, `1:5: "x" has no value`},
		{"[1]", func(v Value) { v.Mapping("b") }, `1:4: "a" must be a mapping, not a list`},
		{"[1]", func(v Value) { v.Text(9) }, `1:4: "a" must be text, not a list`},
		{"[1]", func(v Value) { v.Scalar("", func(string) error { return nil }) }, `1:4: "a" cannot be a list`},
		{"2", func(v Value) { v.Scalar("write 2 m", func(string) error { return errors.New("has no unit") }) }, `1:4: "a": "2" has no unit` + "\nhint: write 2 m"},
		{"2", func(v Value) { v.Problem("is not known", "") }, `1:4: is not known`},
	} {
		f, v := valueOf(t, c.value)
		c.read(v)
		if err := f.Err(); err == nil || !strings.HasPrefix(err.Error(), "f:"+c.want) {
			t.Errorf("%s: %v, want f:%s", c.value, err, c.want)
		}
	}
	f, v := valueOf(t, "2 m")
	if !v.Scalar("", func(text string) error { return nil }) || v.Text(9) != "2 m" || f.Err() != nil {
		t.Errorf("a right value is not read: %v", f.Err())
	}
}

func TestParseList(t *testing.T) {
	f, list := ParseList("f", []byte("- {b: 1}\n- {b: 2}\n"), 2, "a player", "b")
	if f.Err() != nil || len(list) != 2 || list[1].Int("b", 1, 9, 0) != 2 {
		t.Errorf("%v, %v", list, f.Err())
	}
	for src, want := range map[string]string{
		"b: 1\n":                         "f:1:1: the file must be a list, not a mapping\nhint: begin each one with -, and indent its keys",
		"- {b: 1}\n- {b: 1}\n- {b: 1}\n": "f:1:1: the list has 3 items, at most 2",
		"- {b: 1}\n- word\n":             "f:2:3: a player must be a mapping, not the text \"word\"",
		"- {x: 1}\n":                     "f:1:4: unknown key \"x\"",
		"- {b: 1\n":                      "f:",
	} {
		f, _ := ParseList("f", []byte(src), 2, "a player", "b")
		if err := f.Err(); err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%q: %v, want %s", src, err, want)
		}
	}
}

// The nodes of a file keep its comments, to be written again.
func TestDocument(t *testing.T) {
	for _, src := range []string{"# why\na: 1 # so\n", "\uFEFF# why\na: 1 # so\n", "# why\na: \"\\ud83c\\udff8\" # so\n"} {
		doc, err := Document([]byte(src))
		if err != nil || len(doc.Content) != 1 || doc.Content[0].Content[0].HeadComment != "# why" || doc.Content[0].Content[1].LineComment != "# so" {
			t.Errorf("%q: %+v, %v", src, doc, err)
		}
	}
	if _, err := Document([]byte("a: [")); err == nil {
		t.Error("no error of a file that cannot be read")
	}
}

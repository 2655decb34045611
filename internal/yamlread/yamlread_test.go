package yamlread

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/units"
)

// said reads src with the given function and returns all that is said.
func said(src string, read func(m *Mapping)) string {
	f, m := Parse("f", []byte(src), "a", "b", "c")
	if m != nil && read != nil {
		read(m)
	}
	if err := f.Err(); err != nil {
		return err.Error()
	}
	return ""
}

func TestValues(t *testing.T) {
	src := `a: {a: 5, b: 1.5, c: word}
b: [one, "two", {c: 1}]
c: 1m30s
`
	_, m := Parse("f", []byte(src), "a", "b", "c")
	sub := m.Mapping("a", "a", "b", "c")
	if got := sub.Int("a", 1, 9, 0); got != 5 {
		t.Errorf("Int = %d", got)
	}
	if got := sub.Number("b", 1, 2, 0); got != 1.5 {
		t.Errorf("Number = %v", got)
	}
	if got := sub.Number("a", 1, 9, 0); got != 5 {
		t.Errorf("Number = %v", got)
	}
	if got := sub.Enum("c", "", "word", "sword"); got != "word" {
		t.Errorf("Enum = %q", got)
	}
	if got := m.Duration("c", 0); got != 90*time.Second {
		t.Errorf("Duration = %v", got)
	}
	if !m.Has("c") || m.Has("d") || m.Marks().At("b") != (Pos{2, 1}) || m.Marks().At("d") != (Pos{1, 1}) {
		t.Errorf("Has and Marks: %v", m.Marks())
	}
}

func TestLeftOutIsTheDefault(t *testing.T) {
	f, m := Parse("f", []byte("a: 1\n"), "a", "b")
	if m.Int("b", 1, 2, 7) != 7 || m.Number("b", 1, 2, 7) != 7 || m.Enum("b", "d", "x") != "d" || m.Text("b", 9) != "" ||
		m.Texts("b", 9, 9) != nil || m.Mappings("b", 9, "x") != nil || m.Mapping("b") != nil || m.Duration("b", 7) != 7 ||
		m.PositiveDuration("b", 7) != 7 || m.Length("b", 1, 2, 7) != 7 {
		t.Error("a key that is left out has not its default")
	}
	if err := f.Err(); err != nil {
		t.Error(err)
	}
}

func TestWrongValues(t *testing.T) {
	for _, c := range []struct {
		value string
		read  func(m *Mapping)
		want  string
	}{
		{"x", func(m *Mapping) { m.Number("a", 1, 2, 0) }, `"a" must be a number from 1 to 2, not the text "x"`},
		{"3", func(m *Mapping) { m.Number("a", 1, 2, 0) }, `"a" must be a number from 1 to 2, not 3`},
		{".nan", func(m *Mapping) { m.Number("a", 1, 2, 0) }, `"a" must be a number from 1 to 2, not .nan`},
		{"1e999", func(m *Mapping) { m.Number("a", 1, 2, 0) }, `"a" must be a number from 1 to 2, not`},
		{"[1]", func(m *Mapping) { m.Number("a", 1, 2, 0) }, `"a" must be a number from 1 to 2, not a list`},
		{"[1]", func(m *Mapping) { m.Int("a", 1, 2, 0) }, `"a" must be a whole number from 1 to 2, not a list`},
		{"010", func(m *Mapping) { m.Int("a", 1, 20, 0) }, `"a" must be a whole number from 1 to 20, not 010`},
		{"x", func(m *Mapping) { m.Mapping("a") }, `"a" must be a mapping, not the text "x"`},
		{"3m", func(m *Mapping) { m.Length("a", 1, units.Metre, 0) }, `"a": "3m" is not between 1mm and 1m`},
		{"!x y", func(m *Mapping) { m.Text("a", 9) }, `"a" must be text, not a value tagged "!x"`},
		{"!!binary aGk=", func(m *Mapping) { m.Text("a", 9) }, `"a" must be text, not a value tagged "!!binary"`},
		{`"\e[31m"`, func(m *Mapping) { m.Enum("a", "", "x") }, `"a" cannot be "\x1b[31m"`},
		{strings.Repeat("x", 99), func(m *Mapping) { m.Enum("a", "", "x") }, `"a" cannot be "` + strings.Repeat("x", 40) + `…"`},
		{"1", func(m *Mapping) { m.Scalar("a", "", func(string) error { return errors.New("is odd") }) }, `"a": "1" is odd`},
	} {
		got := said("a: "+c.value, c.read)
		if !strings.HasPrefix(got, "f:1:4: "+c.want) {
			t.Errorf("%s: got %q, want %q", c.value, got, c.want)
		}
	}
}

// Every problem is said in the order of the lines, whatever the order of
// reading, and one that aliases share is said once.
func TestOrder(t *testing.T) {
	got := said("a: &x [1]\nb: *x\nc: no\nd: 1\n", func(m *Mapping) {
		m.Int("c", 1, 2, 0)
		m.Texts("b", 9, 9)
		m.Texts("a", 9, 9)
		m.Problem("z", "the whole", "")
	})
	want := `f:1:1: the whole
f:1:8: "b" must be text, not 1
hint: put it in quotes
f:1:8: "a" must be text, not 1
hint: put it in quotes
f:3:4: "c" must be a whole number from 1 to 2, not the text "no"
f:4:1: unknown key "d"
hint: known here: a, b, c`
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
	if got := said("a: &x {b: [1]}\nb: [*x, *x]\n", func(m *Mapping) {
		for _, s := range m.Mappings("b", 9, "it", "b") {
			s.Texts("b", 9, 9)
		}
	}); strings.Count(got, "must be") != 1 {
		t.Errorf("one value that is wrong is said so in\n%s", got)
	}
}

func TestManyProblems(t *testing.T) {
	lines := strings.Split(said(strings.Repeat("x: 1\n", 5000), nil), "\n")
	if got := lines[len(lines)-1]; len(lines) > 3*maxProblems || got != "f:1000:1: 4000 more problems are not shown" {
		t.Errorf("%d lines, the last is %q", len(lines), got)
	}
	lines = strings.Split(said(strings.Repeat("\xff", 5000), nil), "\n")
	if len(lines) > 3*maxFaults {
		t.Errorf("a file that is no text makes %d lines", len(lines))
	}
	f, m := Parse("f", []byte("x: 1\ny: 2\nx: 1\n"), "a")
	m.Need("a")
	if a, b := f.Err().Error(), f.Err().Error(); a != b {
		t.Errorf("Err says first %q and then %q", a, b)
	}
}

// Beyond the size of what is typed by hand, an error has the parser's line.
func TestErrorsOfLongFiles(t *testing.T) {
	line := "a: b\n"
	for _, n := range []int{100, maxSearch} {
		got := said(strings.Repeat(line, n)+"c: @\n", nil)
		if want := fmt.Sprintf("f:%d:", n+1); !strings.HasPrefix(got, want) {
			t.Errorf("after %d lines the error is %q", n, got)
		}
	}
}

func TestAliases(t *testing.T) {
	var wide strings.Builder
	wide.WriteString("a: &x [1, 2, 3, 4, 5, 6, 7, 8, 9]\nb:\n")
	for range 999 {
		wide.WriteString("- *x\n")
	}
	if got := said(wide.String(), nil); got != "" {
		t.Errorf("9,990 repeated values: %s", got)
	}
	wide.WriteString("- *x\n- *x\n")
	if got := said(wide.String(), nil); !strings.HasPrefix(got, `f:1003:3: alias "x" makes`) {
		t.Errorf("10,010 repeated values: %s", got)
	}
	for src, want := range map[string]string{
		"a: &x\n  b: *x\n":             "f:2:6: alias \"x\" stands for a value that holds it",
		"a: &x [&y [*x, *y]]\n":        "f:1:12: alias \"x\" stands for a value that holds it",
		"a: &x 1\n*x : 2\n":            "f:2:1: a key must be a word, not 1",
		"a: &k b\n*k : 2\n":            "",
		"a: &x {b: 1}\nc:\n  <<: *x\n": "",
	} {
		if got := said(src, nil); !strings.HasPrefix(got, want) || want == "" && got != "" {
			t.Errorf("%q: got %q, want %q", src, got, want)
		}
	}
}

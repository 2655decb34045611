package yamlread

import (
	"errors"
	"strings"
	"testing"

	"coldfloor/internal/mutate"
)

// odd is texts that YAML reads in ways of its own.
var odd = []string{"a: 1\n", "a: [\n", "a: &x [*x]", "\t", "a: \"\\u0000\"", "%YAML 1.2\n---\na: b\n...\n---\n", "? a\n: b\n",
	"a: !!binary x", "- - - -", "a: |\n  x\n", "\ufeffa: b", "a: b\rc: d", "<<: *x", "#\n%YAML 1.2", "a: 'b\n\n c'\n", "{", "\"a\": b: c"}

func oddTexts() (all [][]byte) {
	for _, s := range odd {
		all = append(all, []byte(s))
	}
	return all
}

func FuzzParse(f *testing.F) {
	for _, s := range oddTexts() {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { parsed(t, src) })
}

// TestMutated is FuzzParse with texts that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 5000, oddTexts(), mutate.YAML, parsed) }

// parsed fails unless there is a mapping, or problems that name places in the text.
func parsed(t testing.TB, src []byte) {
	file, m := Parse("f", src, "a", "b", "c")
	if m == nil && file.Err() == nil {
		t.Fatal("there is neither a mapping nor a problem")
	}
	if m != nil {
		m.Need("a")
		m.Text("a", 9)
		m.Texts("b", 9, 9)
		m.Mappings("c", 9, "it", "a")
		m.Duration("a", 0)
	}
	var problems Problems
	errors.As(file.Err(), &problems)
	lines := strings.Count(strings.ReplaceAll(strings.ReplaceAll(string(src), "\r\n", "\n"), "\r", "\n"), "\n") + 1
	for _, p := range problems {
		if p.Pos.Line < 1 || p.Pos.Column < 1 || p.Pos.Line > lines+1 {
			t.Fatalf("a file of %d lines has a problem at %v: %s", lines, p.Pos, p.Message)
		}
		if i := strings.IndexFunc(p.Message+p.Hint, isControl); i >= 0 {
			t.Fatalf("a message has a control character: %q", p.Message)
		}
	}
}

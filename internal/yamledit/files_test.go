package yamledit

import (
	"bytes"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"gopkg.in/yaml.v3"

	"coldfloor/internal/mutate"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// files returns every valid session, of the tests and the built-in ones.
func files(t *testing.T) map[string][]byte {
	a, err := txtar.ParseFile(filepath.Join("..", "..", "sessions", "testdata", "valid.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	all := map[string][]byte{}
	for _, f := range a.Files {
		all[f.Name] = f.Data
	}
	for _, b := range sessions.Builtins() {
		all[b.Name] = b.Source
	}
	return all
}

// scalars calls do with every scalar below n that is a value; it follows no alias.
func scalars(n *yaml.Node, do func(*yaml.Node)) {
	for i, c := range n.Content {
		if c.Kind == yaml.ScalarNode && (n.Kind != yaml.MappingNode || i%2 == 1) {
			do(c)
		}
		scalars(c, do)
	}
}

// TestEveryScalar changes each value of each file, alone: no byte but the value's
// own may change, whatever the file looks like and wherever its lines end.
func TestEveryScalar(t *testing.T) {
	for name, src := range files(t) {
		for _, ends := range []string{"\n", "\r\n"} {
			src := []byte(strings.ReplaceAll(string(src), "\n", ends))
			n := 0
			doc, err := yamlread.Document(src)
			if err != nil {
				t.Fatal(err)
			}
			scalars(doc.Content[0], func(*yaml.Node) { n++ })
			for i := range n {
				if i%5 == 0 || ends == "\n" && strings.Contains(name, ".") { // the built-in ones are alike
					oneScalar(t, name, src, i)
				}
			}
		}
	}
}

// oneScalar changes the value at an index.
func oneScalar(t *testing.T, name string, src []byte, index int) {
	t.Helper()
	was, _ := yamlread.Document(src)
	is, _ := yamlread.Document(src)
	unalias(is.Content[0])
	var old *yaml.Node
	i := 0
	scalars(was.Content[0], func(n *yaml.Node) {
		if i == index {
			old = n
		}
		i++
	})
	scalars(is.Content[0], func(n *yaml.Node) {
		if n.Line == old.Line && n.Column == old.Column { // with every copy of it
			n.Value, n.Tag, n.Style = "changed", "!!str", 0
		}
	})
	e := newEditor(src, was.Content[0])
	text, ok := e.edited(was.Content[0], is.Content[0])
	e = newEditor(src, was.Content[0])
	from, to := e.begin(old), e.end(old)
	bom := len(src) - len(e.src)
	if want := bytes.Join([][]byte{src[:bom+from], []byte("changed"), src[bom+to:]}, nil); !ok || !bytes.Equal(text, want) {
		t.Errorf("%s:%d:%d: %v\n%s", name, old.Line, old.Column, ok, text)
	}
}

// TestMutated changes sessions whose text was changed a little: whatever becomes of
// the layout, the file says what it is to say.
func TestMutated(t *testing.T) {
	all := files(t)
	var samples [][]byte
	for _, name := range slices.Sorted(maps.Keys(all)) {
		samples = append(samples, all[name])
	}
	mutate.Run(t, 2000, samples, mutate.YAML, func(t testing.TB, src []byte) {
		if _, err := sessions.Parse("f", src); err != nil {
			return
		}
		var want *yaml.Node
		text, err := Change(src, func(root *yaml.Node) {
			set("changed", "title")(root)
			item(0, scalar("x", "!!str"), "blocks", 0, "exercises")(root)
			pair("added", scalar("a: b # c", "!!str"), "blocks", 0)(root)
			want = root
		})
		if err != nil {
			t.Fatal(err)
		}
		if got, err := yamlread.Document(text); err != nil || !equal(got.Content[0], want) {
			t.Fatalf("%v: %s", err, text)
		}
	})
}

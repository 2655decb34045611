package players

import (
	"errors"
	"testing"

	"coldfloor/internal/mutate"
	"coldfloor/internal/yamlread"
)

var samples = [][]byte{[]byte(`- name: Player One
  height: 1.8m
  easier: [Depth jump, Split squat]
  away: [2026-12-24 to 2026-12-26, 2027-01-06]
- {name: Player Two, volume: 3, limits: {}, off: [rest]}
`), []byte("- name: a\n- name: A\n"), []byte("[]"), []byte("- &x {name: b}\n- *x\n")}

// parsed fails if a file breaks the reader, or is let through with a player
// without a name, or one twice.
func parsed(t testing.TB, src []byte) {
	all, err := Parse("fuzz", src)
	if err != nil {
		var problems yamlread.Problems
		if all != nil || !errors.As(err, &problems) || len(problems) == 0 {
			t.Fatalf("%v, %v", all, err)
		}
		return
	}
	for i, p := range all {
		if p.Name == "" {
			t.Fatalf("%+v is let through", p)
		}
		for _, o := range all[:i] {
			if Same(o.Name, p.Name) {
				t.Fatalf("%q and %q are let through", o.Name, p.Name)
			}
		}
	}
}

// FuzzParse looks for a players' file that breaks the reader.
func FuzzParse(f *testing.F) {
	for _, s := range samples {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { parsed(t, src) })
}

// TestMutated is FuzzParse with files that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 1000, samples, mutate.YAML, parsed) }

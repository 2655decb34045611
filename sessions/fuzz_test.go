package sessions

import (
	"errors"
	"testing"

	"coldfloor/internal/mutate"
	"coldfloor/internal/yamlread"
)

// samples is session files, good and bad.
func samples(t testing.TB) (all [][]byte) {
	for _, name := range []string{"valid.txtar", "invalid.txtar"} {
		for _, file := range archive(t, name).Files {
			all = append(all, file.Data)
		}
	}
	return append(all, builtin("ten-minutes").Source)
}

// FuzzParse looks for a file that breaks the parser, or that it lets through
// with a plan beyond the bounds or an exercise without work.
func FuzzParse(f *testing.F) {
	for _, s := range samples(f) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { parsed(t, src) })
}

// TestMutated is FuzzParse with session files that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 2000, samples(t), mutate.YAML, parsed) }

// parsed fails if a file breaks the parser, or is let through as it must not be.
func parsed(t testing.TB, src []byte) {
	s, err := Parse("fuzz", src)
	if err != nil {
		var problems yamlread.Problems
		if s != nil || !errors.As(err, &problems) || len(problems) == 0 {
			t.Fatalf("Parse = %v, %v", s, err)
		}
		return
	}
	steps, length := Size(s)
	if steps < 1 || steps > MaxSteps || length <= 0 || length > MaxLength {
		t.Fatalf("%d steps of %v are let through", steps, length)
	}
	for _, b := range s.Blocks {
		for _, e := range b.Exercises {
			kinds := 0
			for _, given := range []bool{e.Reps > 0, e.RepsPerSide > 0, e.Time > 0, e.TimePerSide > 0} {
				if given {
					kinds++
				}
			}
			if kinds != 1 || e.Rep <= 0 || e.Name == "" || b.Rounds < 1 || b.Title == "" || s.Title == "" {
				t.Fatalf("%+v is let through", e)
			}
		}
	}
}

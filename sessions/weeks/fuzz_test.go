package weeks

import (
	"errors"
	"testing"

	"coldfloor/internal/mutate"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// samples is plans of weeks, good and bad.
func samples(t testing.TB) (all [][]byte) {
	for _, name := range []string{"valid.txtar", "invalid.txtar"} {
		for _, file := range archive(t, name).Files {
			all = append(all, file.Data)
		}
	}
	return append(all, Builtins()[0].Source)
}

// FuzzParse looks for a plan that breaks the reader, or that it lets through
// with a session that is none, a day out of order or one with too many.
func FuzzParse(f *testing.F) {
	for _, s := range samples(f) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { parsed(t, src) })
}

// TestMutated is FuzzParse with plans that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 500, samples(t), mutate.YAML, parsed) }

// builtin finds built-in sessions alone, so that no input reads a file.
func builtin(name string) (*sessions.Session, error) { return builtinSession(name, ".") }

// parsed fails if a plan breaks the reader, or is let through as it must not be.
func parsed(t testing.TB, src []byte) {
	p, err := Parse("fuzz", src, builtin)
	if err != nil {
		var problems yamlread.Problems
		if p != nil || !errors.As(err, &problems) || len(problems) == 0 {
			t.Fatalf("Parse = %v, %v", p, err)
		}
		return
	}
	days := p.Days()
	for i, d := range days {
		s := p.Session(d)
		steps, length := sessions.Size(s)
		if steps < 1 || steps > sessions.MaxSteps || length <= 0 || length > sessions.MaxLength {
			t.Fatalf("%d steps of %v are let through", steps, length)
		}
		if d.Date < p.Starts || d.Date > p.End() || p.IsAway(d.Date) || d.Place < 1 || d.Place > MaxADay || i > 0 && d.Date < days[i-1].Date {
			t.Fatalf("%+v is let through", d)
		}
	}
	for _, w := range p.Weeks() {
		if len(w.Days) == 0 {
			continue
		}
		if _, err := p.Written(w.Days[0]); err != nil {
			t.Fatal(err)
		}
	}
}

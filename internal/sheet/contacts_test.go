package sheet

import (
	"slices"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sessions"
)

// Contacts that nobody counted are said to be unknown: at the session, at the
// block and at the exercise.
func TestContactsAtLeast(t *testing.T) {
	s, err := sessions.Parse("open.yaml", []byte(`coldfloor: 1
title: T
blocks:
  - {title: Up, exercises: [{name: Pogo hops, reps: 10, contacts: 1}, {name: Tuck jumps, reps: 5}]}
  - {title: Down, exercises: [{name: Plank, time: 20s}]}
  - {title: Out, rounds: 2, rest: 9s, exercises: [{name: Tuck jumps, reps: 5}]}
`))
	if err != nil {
		t.Fatal(err)
	}
	for l, want := range map[*text.Language][3]string{
		&text.English: {"at least 10 foot contacts", "foot contacts not counted", "contacts not counted"},
		&text.German:  {"mindestens 10 Bodenkontakte", "Bodenkontakte nicht gezählt", "Kontakte nicht gezählt"},
	} {
		d := Of(plan.Of(s), l)
		for _, c := range []struct {
			where string
			facts []string
			want  string
		}{
			{"session", d.Facts, want[0]}, {"block 1", d.Blocks[0].Facts, want[0]}, {"block 3", d.Blocks[2].Facts, want[1]},
			{"tuck jumps of block 1", d.Blocks[0].Rows[1].Details, want[2]}, {"tuck jumps of block 3", d.Blocks[2].Rows[0].Details, want[2]},
		} {
			if !slices.Contains(c.facts, c.want) {
				t.Errorf("%s: no %q in %q", c.where, c.want, c.facts)
			}
		}
		if n := len(d.Blocks[1].Facts); n != 2 { // the rounds and the length
			t.Errorf("block 2 says %q", d.Blocks[1].Facts)
		}
	}
}

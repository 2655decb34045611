package plan_test

import (
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// Before an exercise a player means the one that comes next, in it that one;
// after the last there is none.
func TestMeant(t *testing.T) {
	p := of(5*s, block(2, 30*s, reps(3), perSide(2, sessions.LeftFirst)))
	last := -1
	for i := len(p.Steps) - 1; i >= 0; i-- {
		if got := p.NextWork(i); got != last {
			t.Errorf("after step %d comes work at %d, want %d", i, got, last)
		}
		want := last
		if p.Steps[i].Exercise > 0 {
			want = i
		}
		if got := p.Meant(i); got != want {
			t.Errorf("at step %d, a %s, step %d is meant, want %d", i, p.Steps[i].Kind, got, want)
		}
		if p.Steps[i].Kind == plan.Work {
			last = i
		}
	}
}

// An easier variant with a pace of its own makes its reps longer, and nothing
// else.
func TestLengthOfTheEasierVariant(t *testing.T) {
	e := reps(4)
	e.Easier = sessions.Variant{Name: "step", Rep: 3 * s}
	p := of(5*s, block(1, 0, e, timed(20*s)))
	for i, st := range p.Steps {
		want := st.Length
		if st.Kind == plan.Work && st.Reps == 4 {
			want = 12 * s
		}
		if got := p.Length(i, true); got != want || p.Length(i, false) != st.Length {
			t.Errorf("step %d lasts %v, want %v", i, got, want)
		}
	}
}

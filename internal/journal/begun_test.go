package journal

import "testing"

// TestStoppedWhileCountedIn: a run that was stopped before the first second of
// its first set is no session that was done.
func TestStoppedWhileCountedIn(t *testing.T) {
	for _, c := range []struct {
		set  Set
		want Fate
	}{
		{Set{Outcome: Partial, End: "stop", PlannedS: 3, Planned: 4}, Empty},
		{Set{Outcome: Partial, End: "stop", PlannedS: 3, TakenS: .4, Planned: 4}, Counted},
		{Set{Outcome: Skipped, End: "skip", PlannedS: 3}, Empty},
		{Set{Outcome: Done, End: "clock", PlannedS: 3, TakenS: 3}, Counted},
	} {
		r := &Run{State: Stopped, Started: &Started{Title: "Short hops"}, Sets: []Set{c.set}}
		if got := r.Fate(); got != c.want {
			t.Errorf("%+v: %s, want %s", c.set, got, c.want)
		}
	}
}

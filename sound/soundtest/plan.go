package soundtest

import (
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// Superset is a lead-in and two rounds of two exercises.
const Superset = `
lead_in: 5s
blocks:
  - title: Up
    rounds: 2
    rest: 20s
    exercises:
      - {name: Hops, reps: 2, rep: 1s}
      - {name: Lunge, reps_per_side: 1, rep: 2s, switch: 3s}
`

// Planned returns the plan of a session of which the text gives all but the
// version and the title.
func Planned(t testing.TB, blocks string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("test.yaml", []byte("coldfloor: 1\ntitle: Test\n"+blocks))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

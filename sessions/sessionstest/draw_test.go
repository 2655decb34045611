package sessionstest_test

import (
	"math"
	"testing"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sessions/sessionstest"

	"pgregory.net/rapid"
)

// The bound that is worked out before a plan is built must be that of the
// plan that is built.
func TestSizeIsThatOfThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sessionstest.Draw(t)
		steps, length := sessions.Size(s)
		p := plan.Of(s)
		if int64(len(p.Steps)) != steps || p.Total != length {
			t.Fatalf("Size is %d steps of %v, the plan has %d of %v", steps, length, len(p.Steps), p.Total)
		}
		if steps > sessions.MaxSteps || length > sessions.MaxLength {
			t.Fatalf("%d steps of %v are beyond the bounds of a session", steps, length)
		}
	})
}

func TestSizeSaturates(t *testing.T) {
	s := &sessions.Session{Blocks: []sessions.Block{{Rounds: math.MaxInt32, Rest: math.MaxInt64, Exercises: []sessions.Exercise{
		{RepsPerSide: math.MaxInt32, Rep: math.MaxInt64, Switch: time.Hour}}}}}
	if steps, length := sessions.Size(s); steps <= sessions.MaxSteps || length != math.MaxInt64 {
		t.Errorf("Size = %d, %v", steps, length)
	}
}

package plan_test

import (
	"testing"
	"time"

	"coldfloor/internal/plan"
)

// Three rounds of 10 s of work with 99 s between, and a rest after the block
// that separates it from the next: 30 s of work, 198 s between, 1:6.6. The
// rest after the block is no part of it.
func TestRatio(t *testing.T) {
	first, second := block(3, 99*s, reps(5)), block(1, 0, reps(5))
	first.RestAfter = 5 * time.Minute
	p := of(10*s, first, second)
	for number, want := range map[int]struct {
		ratio plan.Ratio
		text  string
	}{
		1: {plan.Ratio{Work: 30 * s, Between: 198 * s}, "1:6.6"},
		2: {plan.Ratio{Work: 10 * s}, "–"},
		0: {plan.Ratio{Work: 40 * s, Between: 498 * s}, "1:12.4"}, // 12.45
	} {
		if got := p.Ratio(number); got != want.ratio || got.String() != want.text {
			t.Errorf("block %d: %+v %v, want %+v %s", number, got, got, want.ratio, want.text)
		}
	}
	// A hair below five is not shown as five.
	if got := (plan.Ratio{Work: 100 * s, Between: 499 * s}).String(); got != "1:4.9" {
		t.Errorf("4.99 is shown as %s", got)
	}
}

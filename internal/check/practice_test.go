package check

import (
	"testing"

	"coldfloor/internal/settings"
	"coldfloor/internal/units"
)

// What is found of practice tries and of those that count is said once, at
// those that count; what is found of practice alone is said there.
func TestPracticeIsNotFoundTwice(t *testing.T) {
	p := read(t, "", `
  - title: Practice
    exercises:
      - {name: Standing long jump, reps: 1, contacts: 1, measure: distance, way: tape, tries: practice, floor: 9m x 1m, travel: 2m}
      - {name: Hop, reps: 1, contacts: 1, measure: distance, way: tape, tries: practice, floor: 8m x 1m}
  - title: Long jump
    exercises:
      - {name: Standing long jump, reps: 1, contacts: 1, measure: distance, way: tape, floor: 9m x 1m, travel: 2m}
`)
	o := options()
	o.Room = settings.Room{Along: 3 * units.Metre, Across: units.Metre}
	found := of("floor", p, o)
	expect(t, found, `error: "Hop" needs a floor of 8 × 1 m`, `error: "Standing long jump" needs a floor of 9 × 1 m`)
	if found[1].Pos.Line <= found[0].Pos.Line {
		t.Errorf("said at the practice, line %d", found[1].Pos.Line)
	}
}

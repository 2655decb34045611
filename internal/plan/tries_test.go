package plan_test

import (
	"fmt"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

func TestTries(t *testing.T) {
	s, err := sessions.Parse("t", []byte(`coldfloor: 1
title: T
blocks:
  - title: Practice
    rounds: 2
    rest: 1m
    exercises: [{name: Jump, reps: 1, measure: distance, way: tape, tries: practice}]
  - title: Jumps
    rounds: 2
    rest: 1m
    exercises:
      - {name: Jump, reps: 1, measure: distance, way: tape}
      - {name: Hop, reps_per_side: 1, measure: distance, way: tape, sides: swap-each-round}
      - {name: Plank, time: 20s}
      - {name: Taps, reps_per_side: 5, sides: alternate-reps, measure: count}
`))
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Of(s)
	got := ""
	for i := range p.Sets {
		for _, x := range p.Tries(i) {
			got += fmt.Sprintf("%s %s %d practice %v in %s\n", p.Steps[p.Sets[i].First].Name, x.Side, x.Number, x.Practice, x.Measure.Unit())
		}
	}
	want := `Jump both 1 practice true in cm
Jump both 2 practice true in cm
Jump both 1 practice false in cm
Hop left 1 practice false in cm
Hop right 1 practice false in cm
Taps both 1 practice false in 
Jump both 2 practice false in cm
Hop right 2 practice false in cm
Hop left 2 practice false in cm
Taps both 2 practice false in 
`
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

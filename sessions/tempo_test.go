package sessions

import (
	"slices"
	"testing"
	"time"
)

// TestFastRisings: an X in a tempo is found wherever it stands, and counts as
// FastRising.
func TestFastRisings(t *testing.T) {
	s, err := Parse("x.yaml", []byte(`coldfloor: 1
title: T
blocks:
  - title: Strong
    exercises:
      - {name: Squat, reps: 5, tempo: 3-1-X}
      - {name: Lunge, reps: 5, tempo: 3-1-1, easier: {name: Half lunge, tempo: 2-0-x}}
      - {name: Squat, reps: 3, tempo: 3-1-X-1}
`))
	if err != nil {
		t.Fatal(err)
	}
	if got := s.FastRisings(); !slices.Equal(got, []string{"Squat", "Half lunge"}) {
		t.Errorf("%q", got)
	}
	if rep := s.Blocks[0].Exercises[0].Rep; rep != 4*time.Second+FastRising {
		t.Errorf("a rep lasts %v", rep)
	}
}

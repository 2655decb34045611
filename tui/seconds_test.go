package tui

import (
	"testing"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/text"
)

// TestSeconds: a length is written as everywhere else, and spelled out a little
// more where letters are all capitals, in which 40 S reads as 405.
func TestSeconds(t *testing.T) {
	for _, c := range []struct {
		language     *text.Language
		length       time.Duration
		text, letter string
	}{
		{&text.English, 40 * time.Second, "40 s", "40 sec"},
		{&text.German, 40 * time.Second, "40 s", "40 Sek."},
		{&text.English, 90 * time.Second, "90 s", "90 sec"},
		{&text.English, 3 * time.Minute, "3 min", "3 min"},
	} {
		got := c.language.Dose(plan.Step{Kind: plan.Work, Length: c.length})
		if spelled := (&style{lang: c.language}).spelled(got); got != c.text || spelled != c.letter {
			t.Errorf("%v: %q, %q, want %q, %q", c.length, got, spelled, c.text, c.letter)
		}
	}
	if got := (&style{lang: &text.English}).spelled("Figure of s"); got != "Figure of s" {
		t.Errorf("a word is spelled %q", got)
	}
}

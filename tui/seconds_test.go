package tui

import (
	"strings"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/sessions"
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
	for _, l := range []*text.Language{&text.English, &text.German} {
		for length, want := range map[time.Duration]string{75 * time.Second: "75 s", 2 * time.Minute: "2 min", 150 * time.Second: "2:30"} {
			p := &plan.Plan{Session: &sessions.Session{}, Steps: []plan.Step{{Kind: plan.Work}, {Kind: plan.Rest, Length: length}, {Kind: plan.Work}}}
			if got, _ := then(l, p, engine.View{}, 0); got != l.Screen.ThenRest(want) {
				t.Errorf("%s: %q before a rest of %v", l.Code, got, length)
			}
			if got := l.Away(length, false); !strings.Contains(got, " "+want) {
				t.Errorf("%s: %q after %v", l.Code, got, length)
			}
		}
	}
	for written, want := range map[string]string{"Figure of s": "Figure of s", "5 sets, 2 steps": "5 sets, 2 steps", "+ 15 s länger": "+ 15 Sek. länger", "4,52_ s": "4,52_ Sek.",
		"6 s, dann 60–90 s.": "6 Sek., dann 60–90 Sek.", "": ""} {
		if got := (&style{lang: &text.German}).spelled(written); got != want {
			t.Errorf("%q is spelled %q, want %q", written, got, want)
		}
	}
}

package tui

import (
	"coldfloor/internal/text"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"

	"coldfloor/internal/today"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
	"coldfloor/tui/glyph"
)

// winter is a plan of two weeks.
func winter(t *testing.T) *weeks.Plan {
	t.Helper()
	p, err := weeks.Parse("winter.yaml", []byte(`coldfloor: 1
title: Two weeks of winter
starts: 2026-12-07
weeks: 2
days: {mon: {session: hops, at: "18:30"}, thu: floor}
matches: [2026-12-11]
`), func(name string) (*sessions.Session, error) {
		contacts := "0"
		if name == "hops" {
			contacts = "1"
		}
		return sessions.Parse(name, []byte("coldfloor: 1\ntitle: "+name+"\nblocks: [{title: Up, exercises: [{name: Work, reps: 10, contacts: "+contacts+"}]}]"))
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestToday looks at the screen of a day at both sizes, and at the keys that
// it offers.
func TestToday(t *testing.T) {
	r := lipgloss.NewRenderer(nil)
	r.SetColorProfile(termenv.Ascii)
	s := newStyle(r, glyph.Plain, &text.English)
	p := winter(t)
	for _, c := range []struct {
		date          string
		width, height int
		keys          string
		says          []string
	}{
		{"2026-12-07", 80, 24, "enter l q", []string{"Mon 7 Dec, week 1 of 2", "today: 18:30 hops, week 1, 0:30, 1 set, 10 foot contacts", "next: Thu 10 Dec, floor, week 1"}},
		{"2026-12-07", 40, 12, "enter l q", []string{"Mon 7 Dec, week 1 of 2", "today: 18:30 hops, week 1, 0:30, 1"}},
		{"2026-12-08", 80, 24, "m x n l q", []string{"today: nothing is planned", "not done: Mon 7 Dec, hops, week 1"}},
		{"2026-12-10", 80, 24, "enter x l q", []string{"a match tomorrow", "today: floor, week 1"}},
		{"2026-12-25", 80, 24, "l q", []string{"after the plan, which ended on Sun 20 Dec"}},
	} {
		date, err := units.ParseDate(c.date)
		if err != nil {
			t.Fatal(err)
		}
		q := questionOfToday(today.On(p, nil, date, 48*time.Hour), &text.English, true)
		view := q.View(s, c.width, c.height)
		for _, want := range c.says {
			if !strings.Contains(view, want) {
				t.Errorf("%s at %dx%d lacks %q:\n%s", c.date, c.width, c.height, want, view)
			}
		}
		if n := strings.Count(view, "\n") + 1; n > c.height {
			t.Errorf("%s at %dx%d has %d lines", c.date, c.width, c.height, n)
		}
		var keys []string
		for _, a := range q.answers {
			keys = append(keys, a.Help().Key)
		}
		if got := strings.Join(keys, " "); got != c.keys {
			t.Errorf("%s offers %q, want %q", c.date, got, c.keys)
		}
	}
}

package weeks

import (
	"strings"
	"testing"

	"coldfloor/internal/units"
)

// TestAmendedKeepsTheLayout amends a plan that is laid out by hand: every line
// that is not about the amendment stays as it was typed.
func TestAmendedKeepsTheLayout(t *testing.T) {
	const head = `# Ida's winter.

coldfloor: 1
title:   Winter      # until the league begins
starts: 2026-12-07
weeks: 6

days:
    mon: jumps.yaml     # after school

    thu: {session:  jumps.yaml,
          at: "18:30"}
`
	date := func(text string) units.Date {
		d, err := units.ParseDate(text)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	for name, c := range map[string]struct {
		was  string
		with Amendment
		is   string
	}{
		"nothing there": {"\n\n# the end\n", Amendment{Hold: []int{2}, Lighter: []Lighter{{Week: 3, Keep: Whole(50)}}, Moves: []Move{{From: date("2026-12-14"), To: date("2026-12-15")}}},
			"hold: [2]\nlighter:\n    - {week: 3, keep: 50%}\nmove:\n    2026-12-14: 2026-12-15\n\n\n# the end\n"},
		"a share lowered": {"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n\n    - {week: 5, keep: 60%}\n\nhold: [2]\n", Amendment{Lighter: []Lighter{{Week: 5, Keep: Whole(50)}}},
			"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n\n    - {week: 5, keep: 50%}\n\nhold: [2]\n"},
		"a share lowered of weeks out of order": {"\nlighter:\n    - {week: 5, keep: 60%}\n\n    - {week: 3,  keep: 60%}   # tired\n", Amendment{Lighter: []Lighter{{Week: 3, Keep: Whole(50)}}},
			"\nlighter:\n    - {week: 5, keep: 60%}\n\n    - {week: 3, keep: 50%} # tired\n"},
		"a week between": {"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n    - {week: 6, keep: 60%}\n\nhold: [2]\n", Amendment{Lighter: []Lighter{{Week: 5, Keep: Whole(50)}}},
			"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n    - {week: 5, keep: 50%}\n    - {week: 6, keep: 60%}\n\nhold: [2]\n"},
		"a week behind": {"\nlighter:\n- {week: 3,  keep: 60%}   # tired\n\nhold: [2]\n", Amendment{Lighter: []Lighter{{Week: 5, Keep: Whole(50)}}, Hold: []int{4}},
			"\nlighter:\n- {week: 3,  keep: 60%}   # tired\n- {week: 5, keep: 50%}\n\nhold: [2, 4]\n"},
		"a list in one line": {"\nlighter: [{week: 5,  keep: 60%}]\n\nhold: [ 3 ]   # a test\n", Amendment{Lighter: []Lighter{{Week: 2, Keep: Whole(50)}}, Hold: []int{4}},
			"\nlighter: [{week: 2, keep: 50%}, {week: 5, keep: 60%}]\n\nhold: [3, 4] # a test\n"},
	} {
		t.Run(name, func(t *testing.T) {
			p, err := Parse("ida.yaml", []byte(head+c.was), From("testdata"))
			if err != nil {
				t.Fatal(err)
			}
			got, err := p.Amended(c.with)
			if err != nil {
				t.Fatal(err)
			}
			if want := head + c.is; string(got) != want {
				t.Errorf("got\n%s\nwant\n%s", strings.TrimPrefix(string(got), head), c.is)
			}
		})
	}
}

// TestLayoutWhereItCannotBeKept falls back on the encoder's: a line put among
// others at a depth that is not theirs would say something else.
func TestLayoutWhereItCannotBeKept(t *testing.T) {
	const src, written, changed = "a: {b: 1,\n c: 2}\n", "a: {b: 1, c: 2}\n", "a: {b: 1, c: 3}\n"
	if got := string(layout([]byte(src), []byte(written), []byte(changed))); got != changed {
		t.Errorf("got %q, want %q", got, changed)
	}
}

package weeks

import (
	"strings"
	"testing"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// mustDate reads a date.
func mustDate(t *testing.T, text string) units.Date {
	t.Helper()
	d, err := units.ParseDate(text)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

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
	date := func(text string) units.Date { return mustDate(t, text) }
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
			"\nlighter:\n    - {week: 5, keep: 60%}\n\n    - {week: 3,  keep: 50%}   # tired\n"},
		"a week between": {"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n    - {week: 6, keep: 60%}\n\nhold: [2]\n", Amendment{Lighter: []Lighter{{Week: 5, Keep: Whole(50)}}},
			"\nlighter:\n    - {week: 3,  keep: 60%}   # tired\n    - {week: 5, keep: 50%}\n    - {week: 6, keep: 60%}\n\nhold: [2]\n"},
		"a week behind": {"\nlighter:\n- {week: 3,  keep: 60%}   # tired\n\nhold: [2]\n", Amendment{Lighter: []Lighter{{Week: 5, Keep: Whole(50)}}, Hold: []int{4}},
			"\nlighter:\n- {week: 3,  keep: 60%}   # tired\n- {week: 5, keep: 50%}\n\nhold: [2, 4]\n"},
		"a list in one line": {"\nlighter: [{week: 5,  keep: 60%}]\n\nhold: [ 3 ]   # a test\n", Amendment{Lighter: []Lighter{{Week: 2, Keep: Whole(50)}}, Hold: []int{4}},
			"\nlighter: [{week: 2, keep: 50%}, {week: 5,  keep: 60%}]\n\nhold: [ 3, 4 ]   # a test\n"},
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

// TestAmendedKeepsLineEnds: a file from another system stays one.
func TestAmendedKeepsLineEnds(t *testing.T) {
	const plan = "coldfloor: 1\r\ntitle: Winter # until the league begins\r\n\r\nstarts: 2026-12-07\r\nweeks: 6\r\ndays:\r\n    mon: &s jumps.yaml\r\n    thu: *s\r\n"
	p, err := Parse("ida.yaml", []byte(plan), From("testdata"))
	if err != nil {
		t.Fatal(err)
	}
	got, err := p.Amended(Amendment{Hold: []int{2}, Lighter: []Lighter{{Week: 3, Keep: Whole(50)}}})
	if want := plan + "hold: [2]\r\nlighter:\r\n    - {week: 3, keep: 50%}\r\n"; err != nil || string(got) != want {
		t.Errorf("%v, got\n%q\nwant\n%q", err, got, want)
	}
}

// TestForPlayerKeepsTheLayout adds the days away where they belong.
func TestForPlayerKeepsTheLayout(t *testing.T) {
	const head = "coldfloor: 1\n\ntitle:  Winter\nstarts: 2026-12-07 # a Monday\nweeks: 6\n\ndays: {mon: jumps.yaml,\n       thu: jumps.yaml}\n"
	days := []Range{{From: mustDate(t, "2026-12-21"), To: mustDate(t, "2026-12-23")}}
	for was, is := range map[string]string{
		"":                                     "away: [2026-12-21..2026-12-23]\n",
		"away: [2026-12-10]  # exams\n":        "away: [2026-12-10, 2026-12-21..2026-12-23]  # exams\n",
		"\naway:\n- 2026-12-10  # exams\n\n\n": "\naway:\n- 2026-12-10  # exams\n- 2026-12-21..2026-12-23\n\n\n",
	} {
		p, err := Parse("ida.yaml", []byte(head+was), From("testdata"))
		if err != nil {
			t.Fatal(err)
		}
		mine, err := p.ForPlayer(days)
		if err != nil {
			t.Fatal(err)
		}
		if want := head + is; string(mine.Source) != want {
			t.Errorf("got\n%s\nwant\n%s", mine.Source, want)
		}
	}
}

// TestWrittenKeepsTheLayout writes the session of a week as its coach laid it out:
// what is shared and changes in one place alone is written out there.
func TestWrittenKeepsTheLayout(t *testing.T) {
	const file = `# Hall, no shoes.
coldfloor: 1
title:  Hops   # short

blocks:
  - title: Up

    rounds: 3
    rest:   75s    # never less
    exercises: &hops
    - {name: Pogo hops,  reps: 8,   # stiff
       contacts: 1}

    - name: Line hops # quiet
      reps_per_side: 5
      easier: {name: Steps, contacts: 0,
               cues: [Slow]}

      cues: [Soft]
  - title: Again
    rest: 60s
    exercises: *hops

# Go home.
`
	const plan = "coldfloor: 1\ntitle: T\nstarts: 2026-12-07\nweeks: 2\ndays: {mon: hops.yaml}\ngrow: [{in: hops.yaml, block: Up, what: reps, by: 1}, {in: hops.yaml, block: Again, what: rounds, by: 1}]\n"
	edits := strings.NewReplacer("title:  Hops ", "title:  Hops, week 2 ", "reps: 8", "reps: 9", "reps_per_side: 5", "reps_per_side: 6", "title: Again\n", "title: Again\n    rounds: 2\n",
		" *hops\n", `
      - {name: Pogo hops, reps: 8, # stiff
        contacts: 1}
      - name: Line hops # quiet
        reps_per_side: 5
        easier: {name: Steps, contacts: 0, cues: [Slow]}
        cues: [Soft]
`)
	easier := strings.NewReplacer("title:  Hops ", "title:  Hops, week 1 ", "Line hops", "Steps",
		"      easier: {name: Steps, contacts: 0,\n               cues: [Slow]}\n", "      contacts: 0\n", "[Soft]", "[Slow]")
	for _, ends := range []string{"\n", "\r\n"} {
		src := strings.ReplaceAll(file, "\n", ends)
		p, err := Parse("plan.yaml", []byte(plan), func(name string) (*sessions.Session, error) { return sessions.Parse(name, []byte(src)) })
		if err != nil {
			t.Fatal(err)
		}
		s, err := p.Written(p.Days()[1])
		if err != nil {
			t.Fatal(err)
		}
		if want := strings.ReplaceAll(edits.Replace(file), "\n", ends); string(s.Source) != want {
			t.Errorf("got\n%s\nwant\n%s", s.Source, want)
		}
		if s, err = p.WrittenFor(p.Days()[0], []string{"Line hops"}); err != nil {
			t.Fatal(err)
		}
		if want := strings.ReplaceAll(easier.Replace(file), "\n", ends); string(s.Source) != want {
			t.Errorf("made easier\n%s\nwant\n%s", s.Source, want)
		}
	}
}

package preview

import (
	"bytes"
	"errors"
	"os"
	"strings"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// plan4 is four weeks whose figures are read off below: one session a week of
// text and one more, hops growing, week 3 lighter, a day away, a match.
const plan4 = `coldfloor: 1
title: Four weeks
for: Badminton singles, off-season
starts: 2026-12-07
weeks: 4
days:
  mon: {session: ten-minutes, at: "18:30"}
  thu: first-hops
grow: [{in: first-hops, exercise: Pogo hops, what: reps, by: 1, limit: 12}]
lighter: [{week: 3, keep: 50%}]
away: [2026-12-10]
matches: [2027-01-03]
`

// TestWeeksGolden holds the preview of weeks, as a chart in both alphabets and
// week by week, to a transcript that a reader can follow.
func TestWeeksGolden(t *testing.T) {
	p, err := weeks.Parse("four.yaml", []byte(plan4), weeks.From("."))
	if err != nil {
		t.Fatal(err)
	}
	w := plan.OfWeeks(p)
	var b bytes.Buffer
	for _, shown := range []safetext.Repertoire{nil, {}} {
		if err := WeeksText(&b, w, shown); err != nil {
			t.Fatal(err)
		}
		b.WriteString("\n---\n")
	}
	for n := 1; n <= w.Count; n++ {
		if err := WeekText(&b, w, n); err != nil {
			t.Fatal(err)
		}
		b.WriteString("\n---\n")
		if d := OfWeeks(w).Only(n); len(d.Weeks) != 1 || d.Weeks[0].Week != n || d.Totals != d.Weeks[0].Totals {
			t.Errorf("week %d alone: %+v", n, d)
		}
	}
	const golden = "testdata/weeks.golden"
	if *update {
		if err := os.WriteFile(golden, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(b.Bytes(), want) {
		t.Errorf("got:\n%s", b.Bytes())
	}
}

// Jumps whose contacts are not counted make every sum that they are in a least
// one, and what such sums would be compared by is not known.
func TestWeeksContactsAtLeast(t *testing.T) {
	find := func(name string) (*sessions.Session, error) {
		jumps := "\n      - {name: Tuck jumps, reps: 5}"
		if name == "counted.yaml" {
			jumps = ""
		}
		return sessions.Parse(name, []byte("coldfloor: 1\ntitle: T\nblocks:\n  - title: Up\n    exercises:\n      - {name: Pogo hops, reps: 10, contacts: 1}"+jumps+"\n"))
	}
	p, err := weeks.Parse("two.yaml", []byte("coldfloor: 1\ntitle: Two\nstarts: 2026-12-07\nweeks: 2\ndays: {mon: counted.yaml, thu: open.yaml}\n"), find)
	if err != nil {
		t.Fatal(err)
	}
	w := plan.OfWeeks(p)
	var all, one bytes.Buffer
	if err := errors.Join(WeeksText(&all, w, nil), WeekText(&one, w, 1)); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"at least 40 foot contacts", "≥ 20       –\n", "█ ≥ 20"} {
		if !strings.Contains(all.String(), want) {
			t.Errorf("no %q in\n%s", want, all.String())
		}
	}
	for _, want := range []string{" 10\n", "≥ 10\n", "≥ 20\n"} {
		if !strings.Contains(one.String(), want) {
			t.Errorf("no %q in\n%s", want, one.String())
		}
	}
	if d := OfWeeks(w); d.Counted || d.Weeks[0].Counted || !d.Weeks[0].Days[0].Counted || d.Weeks[0].Days[1].Counted {
		t.Errorf("%+v", d)
	}
}

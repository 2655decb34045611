package preview

import (
	"bytes"
	"os"
	"testing"

	"coldfloor/internal/plan"
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
	for _, ascii := range []bool{false, true} {
		if err := WeeksText(&b, w, ascii); err != nil {
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

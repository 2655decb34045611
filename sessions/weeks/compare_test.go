package weeks_test

import (
	"fmt"
	"math/big"
	"slices"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// compare holds a plan that was read against the second reading.
func (p *oPlan) compare(t *rapid.T, got *weeks.Plan, src string) {
	days, left := p.schedule()
	all := got.Days()
	if len(all) != len(days) {
		t.Fatalf("%d sessions, want %d\n%s", len(all), len(days), src)
	}
	for i, d := range all {
		want := days[i]
		at := ""
		if d.Slot.At != nil {
			at = d.Slot.At.String()
		}
		if d.Date.String() != want.date.Format(oDate) || d.First.String() != want.first.Format(oDate) || d.Slot.Session != want.session ||
			at != want.at || d.Dose != want.dose || d.Week != p.weekOf(want.date) {
			t.Fatalf("session %d is %+v, want %+v\n%s", i, d, want, src)
		}
		base := p.sessions[slices.IndexFunc(p.sessions, func(s oSession) bool { return s.name == want.session })]
		made, _, _, _ := p.session(base, want.dose)
		if got, want := describe(got.Session(d)), made.describe(want.dose); got != want {
			t.Fatalf("session %d is\n%s\nwant\n%s\n%s", i, got, want, src)
		}
		holdWritten(t, got, d)
	}
	i := 0
	for _, w := range got.Weeks() {
		for _, d := range w.LeftOut {
			if d.Date.String() != left[i].date.Format(oDate) || d.Slot.Session != left[i].session || w.Number != left[i].dose {
				t.Fatalf("left out %+v, want %+v\n%s", d, left[i], src)
			}
			i++
		}
	}
	if i != len(left) {
		t.Fatalf("%d left out, want %d\n%s", i, len(left), src)
	}
}

// holdWritten holds the text of a session against the session: the same plan,
// step by step.
func holdWritten(t *rapid.T, p *weeks.Plan, d weeks.Planned) {
	s := p.Session(d)
	w, err := p.Written(d)
	if err != nil {
		t.Fatalf("%v", err)
	}
	if w.Title != s.Title || !slices.Equal(plan.Of(w).Steps, plan.Of(s).Steps) || plan.Of(w).Totals != plan.Of(s).Totals {
		t.Fatalf("what was written is another session:\n%s\nwant\n%s", describe(w), describe(s))
	}
}

func describe(s *sessions.Session) string {
	text := s.Title + "\n"
	seconds := func(d time.Duration) string { return decimal(big.NewRat(int64(d), int64(time.Second))) }
	for _, b := range s.Blocks {
		text += fmt.Sprintf("%s %d rounds rest %s after %s:", b.Title, b.Rounds, seconds(b.Rest), seconds(b.RestAfter))
		for _, e := range b.Exercises {
			text += fmt.Sprintf(" %s %d %d %s %s;", e.Name, e.Reps, e.RepsPerSide, seconds(e.Time), seconds(e.TimePerSide))
		}
		text += "\n"
	}
	return text
}

func (s oSession) describe(week int) string {
	text := fmt.Sprintf("%s, week %d\n", s.name[:len(s.name)-len(".yaml")], week)
	zero := new(big.Rat)
	for _, b := range s.blocks {
		rest, after := b.rest, b.restAfter
		if rest == nil {
			rest = zero
		}
		if after == nil {
			after = rest
		}
		text += fmt.Sprintf("%s %d rounds rest %s after %s:", b.title, b.rounds, decimal(rest), decimal(after))
		for _, e := range b.exercises {
			v := map[string]string{"reps": "0", "reps_per_side": "0", "time": "0", "time_per_side": "0"}
			v[e.key] = decimal(e.v)
			text += fmt.Sprintf(" %s %s %s %s %s;", e.name, v["reps"], v["reps_per_side"], v["time"], v["time_per_side"])
		}
		text += "\n"
	}
	return text
}

package weeks_test

import (
	"fmt"
	"slices"
	"testing"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// jumps is a session of so many rounds of so many jumps.
func jumps(rounds, reps int) weeks.Finder {
	return func(name string) (*sessions.Session, error) {
		return sessions.Parse(name, fmt.Appendf(nil, `coldfloor: 1
title: Jumps
blocks:
- {title: Up, rounds: %d, rest: 60s, exercises: [{name: Drop jump, reps: %d, contacts: 1}]}`, rounds, reps))
	}
}

// contacts returns the foot contacts of each session of a plan.
func contacts(t *testing.T, find weeks.Finder, src string) (each []int) {
	t.Helper()
	p, err := weeks.Parse("plan.yaml", []byte("coldfloor: 1\ntitle: T\nstarts: 2026-12-07\n"+src), find)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range p.Days() {
		each = append(each, plan.Of(p.Session(d)).Contacts)
	}
	return each
}

func sum(list []int) (n int) {
	for _, v := range list {
		n += v
	}
	return n
}

// TestDropJumpsOfSevenWeeks holds the sums against the programmes of Sáez Sáez
// de Villarreal et al., J Strength Cond Res 2008;22:715–725: 420, 840 and 1680
// drop jumps in seven weeks of one, two and four days, 60 a session.
func TestDropJumpsOfSevenWeeks(t *testing.T) {
	for _, c := range []struct {
		days  string
		total int
	}{{"{mon: a.yaml}", 420}, {"{mon: a.yaml, thu: a.yaml}", 840}, {"{mon: a.yaml, tue: a.yaml, thu: a.yaml, fri: a.yaml}", 1680}} {
		if got := sum(contacts(t, jumps(6, 10), "weeks: 7\ndays: "+c.days)); got != c.total {
			t.Errorf("%s: %d jumps, want %d", c.days, got, c.total)
		}
	}
}

// TestRisingVolume holds a percentage against the series of Ramírez-Campillo
// et al., J Strength Cond Res 2015;29:1884–1893: 80 jumps a session and 16
// more each week, six weeks. A percentage is of the value that the session
// itself has, and so the steps are equal.
func TestRisingVolume(t *testing.T) {
	want := []int{80, 96, 112, 128, 144, 160}
	for _, by := range []string{"20%", "16"} {
		if got := contacts(t, jumps(1, 80), "weeks: 6\ndays: {mon: a.yaml}\ngrow: [{in: a.yaml, what: reps, by: "+by+"}]"); !slices.Equal(got, want) {
			t.Errorf("by %s: %v, want %v", by, got, want)
		}
	}
}

// TestBackAfterABreak holds lighter weeks against the steps after two weeks
// off or more of Caterisano et al., Strength Cond J 2019;41(3):1–23: 50, 30,
// 20 and 10 % less in weeks 1 to 4. Of 120 contacts: 60, 84, 96, 108, 120; that
// they hold for contacts is our own reading.
func TestBackAfterABreak(t *testing.T) {
	want := []int{60, 84, 96, 108, 120}
	got := contacts(t, jumps(1, 120), `weeks: 5
days: {mon: a.yaml}
lighter: [{week: 1, keep: 50%}, {week: 2, keep: 70%}, {week: 3, keep: 80%}, {week: 4, keep: 90%}]`)
	if !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestThreeWeeksUpOneLighter holds the customary month against its words: what
// grows does so for three weeks, the fourth keeps every session and drops a
// round, and the fifth goes on where the third was. Common practice, no source.
func TestThreeWeeksUpOneLighter(t *testing.T) {
	got := contacts(t, jumps(4, 10), `weeks: 5
days: {mon: a.yaml, thu: a.yaml}
grow: [{in: a.yaml, what: reps, by: 1}]
lighter: [{week: 4, keep: 75%}]`)
	if want := []int{40, 40, 44, 44, 48, 48, 36, 36, 52, 52}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestLighterKeepsAShare holds a lighter week's rounds and reps against a sum
// by hand: 60 % of 4 rounds of 10 are 24 of 40 reps; ⌈2.4⌉ = 3 rounds, and
// 10 × 2.4 / 3 = 8 reps in each.
func TestLighterKeepsAShare(t *testing.T) {
	got := contacts(t, jumps(4, 10), "weeks: 1\ndays: {mon: a.yaml}\nlighter: [{week: 1, keep: 60%}]")
	if want := []int{24}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestEveryHoldAndLimit holds n = ⌈k / every⌉, weeks on hold left out, against
// a table by hand: every other week from week 2 adds 2, week 5 is on hold, and
// nothing goes beyond 15.
func TestEveryHoldAndLimit(t *testing.T) {
	got := contacts(t, jumps(1, 10), `weeks: 8
days: {mon: a.yaml}
grow: [{in: a.yaml, what: reps, by: 2, every: 2, limit: 15}]
hold: [5]`)
	// k:              0   1   2   3   3   4   5   6
	// ⌈k/2⌉:          0   1   1   2   2   2   3   3
	if want := []int{10, 12, 12, 14, 14, 14, 15, 15}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestWrittenOut holds the values of each, week by week, the last one standing.
func TestWrittenOut(t *testing.T) {
	got := contacts(t, jumps(1, 6), "weeks: 6\ndays: {mon: a.yaml}\ngrow: [{in: a.yaml, what: reps, from: 2, each: [8, 7, 10]}]")
	if want := []int{6, 8, 7, 10, 10, 10}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

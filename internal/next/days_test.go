package next

import (
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/units"
)

var monday = units.DateOf(time.Date(2027, 1, 11, 0, 0, 0, 0, time.UTC))

func day(n int) units.Date { return monday + units.Date(n) }

// TestDays: worked by hand.
func TestDays(t *testing.T) {
	for _, c := range []struct {
		name string
		week Week
		want []Move
		why  string
	}{
		{"as good as any",
			Week{Days: []Day{{day(0), true}, {day(3), true}, {day(5), false}}, Jumps: []units.Date{day(-4), day(7)}},
			nil, "jump days at least 3 days apart: the planned days are as good as any"},
		{"two days running",
			Week{Days: []Day{{day(0), true}, {day(1), true}}, Jumps: []units.Date{day(-3), day(8)}},
			[]Move{{day(1), day(3)}}, "jump days at least 3 days apart (at least 1 day apart as planned): one day changes"},
		{"match on Saturday",
			Week{Days: []Day{{day(1), true}, {day(5), true}}, Jumps: []units.Date{day(-2), day(9)}, Matches: []units.Date{day(5)}},
			[]Move{{day(5), day(4)}}, "jump days at least 3 days apart, 1 day from the nearest match (0 days as planned): one day changes"},
		{"further apart, but on the day before a match",
			Week{Days: []Day{{day(0), true}, {day(4), true}}, Jumps: []units.Date{day(-3), day(9)}, Matches: []units.Date{day(6)}},
			[]Move{{day(4), day(3)}}, "jump days at least 3 days apart, 3 days from the nearest match (2 days as planned): one day changes"},
		{"a day away",
			Week{Days: []Day{{day(2), true}}, Away: []units.Date{day(2)}},
			[]Move{{day(2), day(0)}}, "jump days with no other near: one day changes"},
	} {
		t.Run(c.name, func(t *testing.T) {
			c.week.First = monday
			got := c.week.Propose()
			if got.Why != c.why {
				t.Errorf("says %q, want %q", got.Why, c.why)
			}
			if len(got.Moves) != len(c.want) {
				t.Fatalf("moves %v, want %v", got.Moves, c.want)
			}
			for i, m := range got.Moves {
				if m != c.want[i] {
					t.Errorf("moves %v, want %v", got.Moves, c.want)
				}
			}
		})
	}
}

// TestDaysCrowded: a move for a match that makes a fourth day with jumps in
// seven says so; a plan that has four already is not blamed on the move.
func TestDaysCrowded(t *testing.T) {
	w := Week{First: monday, Most: 3, Days: []Day{{day(1), true}, {day(3), true}, {day(5), true}},
		Jumps: []units.Date{day(-2)}, Matches: []units.Date{day(9)}}
	const says = "4 days with jumps in seven then, more than 3"
	if got := w.Propose(); len(got.Moves) == 0 || !strings.Contains(got.Why, says) {
		t.Errorf("moves %v, says %q", got.Moves, got.Why)
	}
	w.Jumps = append(w.Jumps, day(-1))
	if got := w.Propose(); strings.Contains(got.Why, says) {
		t.Errorf("moves %v, says %q", got.Moves, got.Why)
	}
}

// TestDaysWithoutJumps: nothing is proposed for a week that has no jumps.
func TestDaysWithoutJumps(t *testing.T) {
	if d := (Week{First: monday, Days: []Day{{day(0), false}}}).Propose(); d != nil {
		t.Errorf("proposes %+v", d)
	}
}

// TestDaysAreBest holds the proposal against every other way to place two or
// three days, judged by the words of its documentation alone.
func TestDaysAreBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Week{First: monday}
		at := rapid.SliceOfNDistinct(rapid.IntRange(0, 6), 2, 3, rapid.ID[int]).Draw(t, "days")
		for _, d := range at {
			w.Days = append(w.Days, Day{day(d), true})
		}
		w.Jumps = []units.Date{day(rapid.IntRange(-7, -1).Draw(t, "before")), day(rapid.IntRange(7, 13).Draw(t, "after"))}
		w.Matches = []units.Date{day(rapid.IntRange(0, 9).Draw(t, "match"))}
		got := w.Propose()
		planned, chosen := make([]units.Date, len(w.Days)), make([]units.Date, len(w.Days))
		for i, d := range w.Days {
			planned[i], chosen[i] = d.Date, d.Date
			for _, m := range got.Moves {
				if m.From == d.Date {
					chosen[i] = m.To
				}
			}
		}
		gap, match := measure(w, chosen)
		clear := eves(w, planned)
		if eves(w, chosen) > clear {
			t.Fatalf("%v puts jumps on the day of a match or the day before", chosen)
		}
		others(len(w.Days), func(dates []units.Date) {
			g, m := measure(w, dates)
			if eves(w, dates) <= clear && (g > gap || g == gap && m > match) {
				t.Fatalf("%v: gap %d, match %d; %v gives %d, %d", chosen, gap, match, dates, g, m)
			}
		})
	})
}

// measure returns the smallest gap between any two days with jumps of which
// one is in the week, and the smallest distance to the match.
func measure(w Week, dates []units.Date) (gap, match int) {
	gap, match = 99, 99
	apart := func(a, b units.Date) int { return max(int(a-b), int(b-a)) }
	for i, a := range dates {
		match = min(match, apart(a, w.Matches[0]))
		for _, b := range append(append([]units.Date{}, dates[i+1:]...), w.Jumps...) {
			gap = min(gap, apart(a, b))
		}
	}
	return gap, match
}

// eves returns how many dates are the match's or the day before.
func eves(w Week, dates []units.Date) int {
	n := 0
	for _, d := range dates {
		if d == w.Matches[0] || d == w.Matches[0]-1 {
			n++
		}
	}
	return n
}

func others(n int, try func([]units.Date)) {
	for code := range 7 * 7 * 7 {
		dates := []units.Date{day(code % 7), day(code / 7 % 7), day(code / 49)}[:n]
		if dates[0] != dates[1] && dates[n-1] != dates[0] && (n == 2 || dates[2] != dates[1]) {
			try(dates)
		}
	}
}

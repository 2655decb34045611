package next

import (
	"cmp"
	"fmt"
	"slices"

	"coldfloor/internal/units"
)

// Week is when the sessions of one week fall, and what they have to keep clear
// of.
type Week struct {
	First   units.Date   // its first day
	Days    []Day        // the days with sessions, one a date, in order
	Jumps   []units.Date // days with jumps before and after the week, done or planned
	Matches []units.Date
	Away    []units.Date // days on which nobody trains
	Most    int          // days with jumps in seven that the limits allow; 0: any number
}

// Day is one day with sessions.
type Day struct {
	Date  units.Date
	Jumps bool // a session of the day has foot contacts
}

// Days is when to train in a week.
type Days struct {
	Moves []Move `json:"moves,omitempty"` // none: as planned
	Why   string `json:"why"`
}

// Move is a day whose sessions are better done on another.
type Move struct {
	From units.Date `json:"from"`
	To   units.Date `json:"to"`
}

// far stands for the distance to something that is not there.
const far = 1 << 20

// score is what one arrangement of the week is judged by, the most important
// first: the days with jumps that it puts on a match's day or the day before,
// beyond those that the plan has there; the smallest gap between two days with
// jumps, across the week's edges; the smallest distance of a day with jumps to a
// match; the days changed.
type score struct{ eves, gap, match, changed int }

// better reports whether s goes before t.
func (s score) better(t score) bool {
	return cmp.Or(cmp.Compare(t.eves, s.eves), cmp.Compare(s.gap, t.gap), cmp.Compare(s.match, t.match), cmp.Compare(t.changed, s.changed)) > 0
}

// Propose finds the best days of the week by trying all of them: at most
// 7! = 5040. Of equal ones the earliest is taken. It returns nil if no day has
// jumps.
func (w Week) Propose() *Days {
	if !slices.ContainsFunc(w.Days, func(d Day) bool { return d.Jumps }) {
		return nil
	}
	planned := make([]units.Date, len(w.Days))
	for i, d := range w.Days {
		planned[i] = d.Date
	}
	best, at := w.score(planned), slices.Clone(planned)
	asPlanned := best
	if !w.allowed(planned) {
		best = score{eves: far}
	}
	w.arrange(nil, func(dates []units.Date) {
		if s := w.score(dates); s.better(best) {
			best, at = s, slices.Clone(dates)
		}
	})
	d := &Days{Why: w.why(asPlanned, best) + w.crowded(planned, at)}
	for i, to := range at {
		if to != planned[i] {
			d.Moves = append(d.Moves, Move{planned[i], to})
		}
	}
	return d
}

// arrange calls try with every way to put the days left on free dates of the
// week, the earliest first.
func (w Week) arrange(dates []units.Date, try func([]units.Date)) {
	if len(dates) == len(w.Days) {
		try(dates)
		return
	}
	for i := range 7 {
		d := w.First + units.Date(i)
		if slices.Contains(dates, d) || slices.Contains(w.Away, d) {
			continue
		}
		w.arrange(append(dates, d), try)
	}
}

// allowed reports whether every date is in the week and none is a day away.
func (w Week) allowed(dates []units.Date) bool {
	return !slices.ContainsFunc(dates, func(d units.Date) bool {
		in := int(d - w.First)
		return in < 0 || in > 6 || slices.Contains(w.Away, d)
	})
}

// score judges an arrangement.
func (w Week) score(dates []units.Date) score {
	s := score{gap: far, match: far}
	jumps := w.edges()
	for i, d := range dates {
		if w.Days[i].Jumps {
			s.eves += w.eve(d) - w.eve(w.Days[i].Date)
		}
	}
	s.eves = max(0, s.eves)
	for i, d := range dates {
		if !w.Days[i].Jumps {
			continue
		}
		jumps = append(jumps, d)
		for _, m := range w.Matches {
			s.match = min(s.match, abs(int(m-d)))
		}
	}
	slices.Sort(jumps)
	for i := 1; i < len(jumps); i++ {
		s.gap = min(s.gap, int(jumps[i]-jumps[i-1]))
	}
	for i, d := range dates {
		if d != w.Days[i].Date {
			s.changed++
		}
	}
	return s
}

// eve returns 1 for the day of a match and the day before, on which the check
// warns of jumps, and 0 for others.
func (w Week) eve(d units.Date) int {
	if slices.Contains(w.Matches, d) || slices.Contains(w.Matches, d+1) {
		return 1
	}
	return 0
}

// crowded says so if the days chosen put more days with jumps into seven than
// the limits allow and the planned ones do not: a move away from a match can
// bring the week's jumps nearer to those of the week before.
func (w Week) crowded(planned, chosen []units.Date) string {
	n := w.inSeven(chosen)
	if w.Most == 0 || n <= w.Most || n <= w.inSeven(planned) {
		return ""
	}
	return fmt.Sprintf("; %d days with jumps in seven then, more than %d: keep the planned days, or leave one out", n, w.Most)
}

// inSeven returns the most days with jumps in any seven days that an
// arrangement of the week has a part in.
func (w Week) inSeven(dates []units.Date) int {
	jumps := slices.Clone(w.Jumps)
	for i, d := range dates {
		if w.Days[i].Jumps {
			jumps = append(jumps, d)
		}
	}
	slices.Sort(jumps)
	jumps = slices.Compact(jumps)
	most := 0
	for first := w.First - 6; first <= w.First+6; first++ {
		n := 0
		for _, d := range jumps {
			if d >= first && d < first+7 {
				n++
			}
		}
		most = max(most, n)
	}
	return most
}

// edges returns the last day with jumps before the week and the first after it.
func (w Week) edges() []units.Date {
	var before, after []units.Date
	for _, d := range w.Jumps {
		switch in := int(d - w.First); {
		case in < 0:
			before = append(before, d)
		case in > 6:
			after = append(after, d)
		}
	}
	var edges []units.Date
	if len(before) > 0 {
		edges = append(edges, slices.Max(before))
	}
	if len(after) > 0 {
		edges = append(edges, slices.Min(after))
	}
	return edges
}

// why says what the days chosen give, and what the planned ones would.
func (w Week) why(planned, best score) string {
	text := "jump days " + apart(best.gap)
	if best.gap != planned.gap {
		text += " (" + apart(planned.gap) + " as planned)"
	}
	if best.match < far {
		text += fmt.Sprintf(", %s from the nearest match", units.Count(best.match, "day"))
		if best.match != planned.match {
			text += fmt.Sprintf(" (%s as planned)", units.Count(planned.match, "day"))
		}
	}
	switch best.changed {
	case 0:
		return text + ": the planned days are as good as any"
	case 1:
		return text + ": one day changes"
	}
	return text + fmt.Sprintf(": %d days change", best.changed)
}

// apart says how far jump days are from each other.
func apart(days int) string {
	if days == far {
		return "with no other near"
	}
	return fmt.Sprintf("at least %s apart", units.Count(days, "day"))
}

func abs(n int) int { return max(n, -n) }

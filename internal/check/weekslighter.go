package check

import (
	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// lighterWeeks looks for too many weeks in a row without a lighter one, and
// for lighter ones that stop the training or add to it.
func lighterWeeks(w *weeksChecker) {
	row, from := 0, 1
	high := w.limitHigh("lighter_after")
	tell := func(last int) {
		if row > high {
			w.add(Warning, w.p.Marks.At("lighter"), figures{"from": from, "to": last, "high": high},
				"weeks %d to %d are %d in a row without a lighter one; one after at most %d (%s)", from, last, row, high, w.source("lighter_after"))
		}
		row, from = 0, last+2
	}
	for i, week := range w.p.List {
		if week.Lighter || len(week.Sessions) == 0 {
			tell(week.Number - 1)
		} else {
			row++
		}
		if week.Lighter {
			w.lighterWeek(i)
		}
	}
	tell(w.p.Count)
}

// lighterWeek looks at one lighter week.
func (w *weeksChecker) lighterWeek(i int) {
	week := w.p.List[i]
	at := w.lighterPos(week.Number)
	if len(week.Sessions) == 0 {
		w.add(Warning, at, figures{"week": week.Number},
			"week %d stops altogether: a week of no training in the middle of nine cost strength and readiness (Coleman et al. 2024, seen); cut down, and keep the sessions", week.Number)
		return
	}
	if i == 0 || len(w.p.List[i-1].Sessions) == 0 || w.p.List[i-1].Lighter {
		return
	}
	before := w.p.List[i-1]
	what := ""
	switch {
	case week.Contacts > before.Contacts:
		what = "foot contacts"
	case week.Work > before.Work:
		what = "work"
	case len(week.Sessions) > len(before.Sessions):
		what = "sessions"
	default:
		return
	}
	w.add(Warning, at, figures{"week": week.Number, "contacts": week.Contacts, "contacts_before": before.Contacts},
		"week %d is meant to be lighter and has more %s than week %d (%s)", week.Number, what, before.Number, practiceSource)
}

const practiceSource = "common practice, no source"

// lighterPos returns the position of a lighter week in the file.
func (w *weeksChecker) lighterPos(week int) yamlread.Pos {
	for _, l := range w.p.Lighter {
		if l.Week == week {
			return l.Pos
		}
	}
	return w.p.Marks.At("lighter")
}

// taperDays is how long before a match a lighter week is looked for.
const taperDays = 21

// taper notes a first match with three weeks before it and none of them
// lighter.
func taper(w *weeksChecker) {
	for _, m := range w.matches() {
		if m < w.p.Starts {
			continue
		}
		if m-w.p.Starts < taperDays || m > w.p.End()+7 {
			return
		}
		if !w.lighterWithin(m-taperDays, m) {
			w.add(Note, w.p.Marks.At("matches"), figures{"match": m.String()},
				"the first match, on %s, follows three weeks without a lighter one; 27 studies of competitors did best with two weeks of 41–60 %% less volume, intensity and days kept (Bosquet et al. 2007, seen; mostly endurance)", m.Short())
		}
		return
	}
}

// lighterWithin reports whether a week that overlaps the days before a match
// is lighter or has no session.
func (w *weeksChecker) lighterWithin(from, to units.Date) bool {
	for _, week := range w.p.List {
		if week.To() >= from && week.From <= to && (week.Lighter || len(week.Sessions) == 0) {
			return true
		}
	}
	return false
}

package check

import (
	"fmt"
	"math"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// weekContacts holds the contacts of each week against those of two sessions
// of the level.
func weekContacts(w *weeksChecker) {
	level, whose := w.o.Player.Level, ""
	if level == "" {
		level, whose = sessions.Advanced, "; no level is given, this is that of an advanced player"
	}
	key := "week_contacts_" + string(level)
	r := w.limit(key)
	var above []int
	most, least := 0, 0
	for i, week := range w.p.List {
		if float64(week.Contacts) > r.High {
			above = append(above, week.Number)
		}
		if week.Contacts > w.p.List[most].Contacts {
			most = i
		}
		if week.Contacts < w.p.List[least].Contacts {
			least = i
		}
	}
	high := w.p.List[most]
	if high.Contacts == 0 {
		return
	}
	f := figures{"most": high.Contacts, "most_week": high.Number, "least": w.p.List[least].Contacts, "low": r.Low, "high": r.High, "weeks": above}
	at := w.p.Marks.At("level")
	if len(above) > 0 {
		w.add(Warning, at, f, "%s: up to %s a week (week %d), above the range of level %s, %s%s",
			weekList(above), units.Count(high.Contacts, "foot contact"), high.Number, level, w.cite(key), whose)
		return
	}
	span := units.Count(high.Contacts, "foot contact") + " a week"
	if least := w.p.List[least].Contacts; least < high.Contacts {
		span = fmt.Sprintf("%d to %s, the most in week %d", least, span, high.Number)
	}
	w.add(Note, at, f, "%s; the range of level %s is %s%s", span, level, w.cite(key), whose)
}

// earlier is one session with contacts before another.
type earlier struct {
	date     units.Date
	contacts int
}

// monthBefore is how far back a session is held against those before it.
const monthBefore = 30

// sessionRise holds each session's contacts against the largest session of the
// 30 days before, in the plan and in the journal.
func sessionRise(w *weeksChecker) {
	var before []earlier
	for _, j := range w.o.Jumps {
		if !j.Unknown && j.Contacts > 0 {
			before = append(before, earlier{units.DateOf(j.End), j.Contacts})
		}
	}
	r := w.limit("session_rise")
	for _, week := range w.p.List {
		for _, d := range week.Sessions {
			largest := largestBefore(before, d.Date)
			if largest > 0 && d.Contacts > 0 {
				w.rise(d, largest, r.Low, r.High)
			}
			if d.Contacts > 0 {
				before = append(before, earlier{d.Date, d.Contacts})
			}
		}
	}
	w.tellWeeks()
}

// largestBefore returns the most contacts of one session within the 30 days
// before a date, or 0 if there was none.
func largestBefore(all []earlier, date units.Date) (most int) {
	for _, e := range all {
		if e.date < date && date-e.date <= monthBefore {
			most = max(most, e.contacts)
		}
	}
	return most
}

// rise says how far a session is above the largest one before it, if that is
// beyond the limits. Of one session of the pattern the steepest rise is told,
// with its other weeks.
func (w *weeksChecker) rise(d plan.DayPlan, largest int, low, high float64) {
	percent := 100 * float64(d.Contacts-largest) / float64(largest)
	if percent <= low {
		return
	}
	severity := Note
	if percent > high {
		severity = Warning
	}
	rise := math.Round(percent)
	f := Finding{Rule: w.rule, Severity: severity, Pos: d.Slot.Pos,
		Figures: figures{"date": d.Date.String(), "week": d.Week, "contacts": d.Contacts, "largest": largest, "rise_pct": rise},
		Message: fmt.Sprintf("%s, week %d: %s, %s more than the largest session of the 30 days before (%d); above %g %%, more overuse injuries were seen in runners; for jumps that is an analogy (%s)",
			d.Date.Short(), d.Week, units.Count(d.Contacts, "foot contact"), units.Percent(percent/100, low/100, high/100), largest, low, w.source("session_rise"))}
	w.steepest(f, func(a, b Finding) bool { return a.Figures["rise_pct"].(float64) > b.Figures["rise_pct"].(float64) })
}

// steepest notes a finding, or joins it to the one that the rule at work has
// at the same place with the same severity: the message is then of the one that
// is worse, and the figures have the weeks of both.
func (w *weeksChecker) steepest(f Finding, worse func(a, b Finding) bool) {
	week := f.Figures["week"].(int)
	for i := range w.found {
		o := &w.found[i]
		if o.Rule != f.Rule || o.Severity != f.Severity || o.Pos != f.Pos {
			continue
		}
		list := append(o.Figures["weeks"].([]int), week)
		if worse(f, *o) {
			*o = f
		}
		o.Figures["weeks"] = list
		return
	}
	f.Figures["weeks"] = []int{week}
	w.found = append(w.found, f)
}

// tellWeeks puts after each finding of the rule at work the other weeks that
// have it too.
func (w *weeksChecker) tellWeeks() {
	for i := range w.found {
		f := &w.found[i]
		list, ok := f.Figures["weeks"].([]int)
		if f.Rule != w.rule || !ok || f.Figures["week"] == nil {
			continue
		}
		var others []int
		for _, n := range list {
			if n != f.Figures["week"] {
				others = append(others, n)
			}
		}
		if len(others) > 0 {
			f.Message += "; likewise in " + weekList(others)
		}
	}
}

// raised looks for weeks in which two things are made harder at once.
func raised(w *weeksChecker) {
	for n := 2; n <= w.p.Count; n++ {
		list := w.p.Raised(n)
		if len(list) < 2 {
			continue
		}
		var names []string
		for _, r := range list {
			names = append(names, fmt.Sprintf("%s of %s", r.What, r.Session))
		}
		w.steepest(Finding{Rule: w.rule, Severity: Warning, Pos: w.p.Marks.At("grow"), Figures: figures{"week": n, "raised": len(list)},
			Message: fmt.Sprintf("week %d makes %d things harder at once: %s; one at a time (common practice, no source)", n, len(list), names4(names))},
			func(a, b Finding) bool { return a.Figures["raised"].(int) > b.Figures["raised"].(int) })
	}
	w.tellWeeks()
}

// names4 names a few things.
func names4(names []string) string { return list(names, 4) }

// weekMinutes holds the length of each week against the time there is.
func weekMinutes(w *weeksChecker) {
	if w.o.Within == 0 {
		return
	}
	for _, week := range w.p.List {
		if week.Totals.Total > w.o.Within {
			w.add(Error, w.p.Marks.At("days"), figures{"week": week.Number, "length_s": week.Totals.Total.Seconds(), "within_s": w.o.Within.Seconds()},
				"week %d takes %s, there are %s", week.Number, units.Clock(week.Totals.Total), units.Clock(w.o.Within))
		}
	}
}

package check

import (
	"fmt"
	"maps"
	"slices"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
)

// jumpSpacing looks at the days from one day with jumps to the next, and at
// how many of seven have some.
func jumpSpacing(w *weeksChecker) {
	days := w.jumpDates()
	r := w.limit("jump_interval")
	between := map[units.Date][]int{}
	closest := map[units.Date]plan.DayPlan{}
	for i := 1; i < len(days); i++ {
		a, b := days[i-1], days[i]
		gap := b.Date - a.Date
		switch hours := float64(gap) * 24 * 3600; {
		case hours < r.Low:
			w.tooClose(a, b, int(gap), r)
		case hours < r.High:
			between[gap] = append(between[gap], b.Week)
			closest[gap] = b
		}
	}
	for _, gap := range slices.Sorted(maps.Keys(between)) {
		list := between[gap]
		w.add(Note, closest[gap].Slot.Pos, figures{"days": int(gap), "low_s": r.Low, "high_s": r.High, "weeks": list},
			"%s: days with jumps are %s apart; the range is %s", weekList(list), units.Count(int(gap), "day"), w.cite("jump_interval"))
	}
	w.tellWeeks()
	w.crowded(days)
}

// tooClose warns of two days with jumps that are closer than the range.
func (w *weeksChecker) tooClose(a, b plan.DayPlan, gap int, r settings.Range) {
	w.steepest(Finding{Rule: w.rule, Severity: Warning, Pos: b.Slot.Pos,
		Figures: figures{"date": b.Date.String(), "week": b.Week, "days": gap, "low_s": r.Low, "high_s": r.High},
		Message: fmt.Sprintf("week %d: jumps on %s and on %s, %s apart; the range is %s. A caution, not a proven limit: 24 h or 48 h made no difference in 166 players of 10–17 years (Ramírez-Campillo et al. 2015, seen)",
			b.Week, a.Date.Short(), b.Date.Short(), units.Count(gap, "day"), w.cite("jump_interval"))},
		func(a, b Finding) bool { return a.Figures["days"].(int) < b.Figures["days"].(int) })
}

// crowded notes seven days with more days of jumps than the limit.
func (w *weeksChecker) crowded(days []plan.DayPlan) {
	high := w.limitHigh("jump_days")
	var list []int
	most := 0
	for i, d := range days {
		n := 1
		for j := i - 1; j >= 0 && d.Date-days[j].Date < 7; j-- {
			n++
		}
		if n > high {
			list, most = append(list, d.Week), max(most, n)
		}
	}
	if len(list) > 0 {
		w.add(Warning, w.p.Marks.At("days"), figures{"days": most, "high": high, "weeks": list},
			"%s: up to %d days with jumps in seven; the range is %s", weekList(list), most, w.cite("jump_days"))
	}
}

// beforeMatch warns of jumps on the day of a match or the day before.
func beforeMatch(w *weeksChecker) {
	matches := w.matches()
	for _, d := range w.jumpDates() {
		for _, m := range matches {
			if gap := m - d.Date; gap == 0 || gap == 1 {
				when := "on the day of"
				if gap == 1 {
					when = "the day before"
				}
				w.add(Warning, d.Slot.Pos, figures{"date": d.Date.String(), "match": m.String()},
					"week %d: jumps on %s, %s a match; keep both days free of them (common practice, no source)", d.Week, d.Date.Short(), when)
				break
			}
		}
	}
}

// restDay warns of seven days running with training on each.
func restDay(w *weeksChecker) {
	trained := map[units.Date]bool{}
	for _, week := range w.p.List {
		for _, d := range week.Sessions {
			trained[d.Date] = true
		}
	}
	run := 0
	var list []int
	for d := w.p.Starts; d <= w.p.End(); d++ {
		if run++; !trained[d] {
			run = 0
		}
		if run >= 7 {
			list = append(list, w.p.WeekOf(d))
		}
	}
	if len(list) > 0 {
		w.add(Warning, w.p.Marks.At("days"), figures{"weeks": slices.Compact(list)},
			"%s: seven days in a row with training; leave one of them free (common practice, no source)", weekList(list))
	}
}

// longBreak is a break after which a player comes back with less.
const longBreak = 14

// leftOut says what the days away leave out, and what that does to the days
// with jumps around them.
func leftOut(w *weeksChecker) {
	days := w.jumpDates()
	for _, week := range w.p.List {
		for _, d := range week.LeftOut {
			text := fmt.Sprintf("week %d: away on %s, so %s is left out", week.Number, d.Date.Short(), quote(d.Slot.Session))
			f := figures{"date": d.Date.String()}
			if gap, ok := gapAround(days, d.Date); ok && jumping(plan.DayPlan{Planned: d, Plan: plan.Of(w.p.Session(d))}) {
				text += fmt.Sprintf("; the days with jumps before and after it are %s apart", units.Count(gap, "day"))
				f["days_between_jumps"] = gap
				if gap >= longBreak {
					text += ", a break: come back with less (Caterisano et al. 2019, second-hand: 50 % of the usual in the first week)"
				}
			}
			w.add(Note, w.p.Marks.At("away"), f, "%s", text)
		}
	}
}

// gapAround returns the days between the day with jumps before a date and the
// one after it.
func gapAround(days []plan.DayPlan, date units.Date) (gap int, ok bool) {
	for i := 1; i < len(days); i++ {
		if days[i-1].Date < date && days[i].Date > date {
			return int(days[i].Date - days[i-1].Date), true
		}
	}
	return 0, false
}

// farAhead warns of a plan that begins in another decade.
func farAhead(w *weeksChecker) {
	if w.o.Now.IsZero() {
		return
	}
	today := units.DateOf(w.o.Now)
	starts := w.p.Starts.In(time.UTC, 0)
	if starts.After(today.In(time.UTC, 0).AddDate(10, 0, 0)) || starts.Before(today.In(time.UTC, 0).AddDate(-10, 0, 0)) {
		w.add(Warning, w.p.Marks.At("starts"), nil, "the plan starts on %s, more than ten years from today; is the year right?", w.p.Starts)
	}
}

package today

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// offer says whether a missed session may be done on the day: never beside
// another one, and one with jumps only if the time to the jumps before and
// after it, and to a match, allows it.
func (d *Day) offer(o *season.Day, runs []*journal.Run, now time.Time, interval time.Duration) (ok bool, why Reason) {
	if len(d.Planned) > 0 {
		return false, Reason{Kind: OwnSession}
	}
	p := d.Season.Plan
	if !jumping(p.Session(o.Planned)) {
		return true, Reason{Kind: NoJumps}
	}
	for _, m := range p.Matches {
		switch m.Date - d.Date {
		case 0:
			return false, Reason{Kind: MatchToday}
		case 1:
			return false, Reason{Kind: MatchTomorrow}
		}
	}
	if last, jumped := lastJumps(runs, now); jumped && now.Sub(last) < interval {
		return false, Reason{LastJumps, now.Sub(last), interval}
	}
	if next, found := d.nextJumps(now); found && next.Sub(now) < interval {
		return false, Reason{NextJumps, next.Sub(now), interval}
	}
	return true, Reason{Kind: Apart, Interval: interval}
}

// lastJumps returns when the player jumped last.
func lastJumps(runs []*journal.Run, now time.Time) (time.Time, bool) {
	all := journal.JumpsOf(runs, now)
	if len(all) == 0 {
		return time.Time{}, false
	}
	return all[len(all)-1].At, true
}

// nextJumps returns when the plan has jumps next after the date: at the time
// of day given, or else at the same time as now.
func (d *Day) nextJumps(now time.Time) (time.Time, bool) {
	p := d.Season.Plan
	for _, day := range p.Days() {
		if day.Date > d.Date && jumping(p.Session(day)) {
			return day.Date.In(now.Location(), at(day, now)), true
		}
	}
	return time.Time{}, false
}

// at returns the time of day of a session, that of now if none is given.
func at(d weeks.Planned, now time.Time) units.TimeOfDay {
	if d.Slot.At != nil {
		return *d.Slot.At
	}
	return units.TimeOfDay(now.Hour()*60 + now.Minute())
}

// jumping reports whether a session has jumps outside what only prepares.
func jumping(s *sessions.Session) bool {
	for i := range s.Blocks {
		for j := range s.Blocks[i].Exercises {
			e := &s.Blocks[i].Exercises[j]
			if e.Contacts > 0 || s.Blocks[i].Part == sessions.Main && jumps.Is(e) {
				return true
			}
		}
	}
	return false
}

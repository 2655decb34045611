package today

import (
	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/season"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
)

// Heading returns the date and the place in the plan: "Mon 7 Dec, week 1 of 6".
func (d *Day) Heading(l *text.Language) string {
	p := d.Season.Plan
	where := l.Day.Week(d.Week, p.Count)
	switch {
	case d.Week < 1:
		where = l.Day.BeforePlan(l.Date(p.Starts))
	case d.Week > p.Count:
		where = l.Day.AfterPlan(l.Date(p.End()))
	}
	if _, lighter := p.IsLighter(d.Week); lighter {
		where += ", " + l.Day.Lighter
	}
	return l.Date(d.Date) + ", " + where
}

// title returns what a language calls a day's session.
func (d *Day) title(day *season.Day, l *text.Language) string {
	return safetext.Clean(l.Title(d.Season.Plan.Session(day.Planned).Title))
}

// Dose returns a day's session with its length and dose.
func (d *Day) Dose(day *season.Day, l *text.Language) string {
	s := plan.Of(d.Season.Plan.Session(day.Planned))
	said := d.title(day, l) + ", " + units.Clock(s.Total) + ", " + l.Sheet.Sets(s.Totals.Sets)
	if contacts := l.Sheet.FootContacts(s.Contacts, jumps.AllCounted(s.Session.Blocks...)); contacts != "" {
		said += ", " + contacts
	}
	if at := day.Slot.At; at != nil {
		said = at.String() + " " + said
	}
	return said
}

// Strong returns how many of the Lines after the first say what is today's.
func (d *Day) Strong() int { return 1 + len(d.Matches) + max(1, len(d.Planned)) }

// Lines returns the day in sentences: what is today's, what is next, what was
// missed.
func (d *Day) Lines(l *text.Language) []string {
	lines := []string{safetext.Clean(l.Name(d.Season.Plan.Title)), d.Heading(l)}
	for _, m := range d.Matches {
		when := l.Day.MatchToday
		if m.Date != d.Date {
			when = l.Day.MatchTomorrow
		}
		if m.At != nil {
			when += l.Day.At(m.At.String())
		}
		lines = append(lines, when)
	}
	if len(d.Planned) == 0 {
		lines = append(lines, l.Day.Today(l.Day.Nothing))
	}
	for _, p := range d.Planned {
		lines = append(lines, l.Day.Today(d.Dose(p, l)+state(p, l)))
	}
	if d.Next != nil {
		lines = append(lines, l.Day.Next(l.Date(d.Next.Date), d.Dose(d.Next, l)))
	}
	last := ""
	for _, m := range d.Missed {
		why := m.Why.In(l)
		said := why
		if why == last {
			said = l.Day.Likewise
		}
		lines, last = append(lines, l.Day.NotDone(l.Date(m.Date), d.title(m.Day, l), said)), why
	}
	return lines
}

// state says of a session that is not open how it stands.
func state(d *season.Day, l *text.Language) string {
	switch d.State {
	case season.Done:
		return " (" + l.Day.Done + ")"
	case season.Missed:
		return " (" + l.Day.Missed + ")"
	case season.Skipped:
		return " (" + l.Day.Skipped + ")"
	case season.LeftOut:
		return " (" + l.Day.LeftOut + ")"
	}
	return ""
}

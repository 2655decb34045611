package today

import (
	"fmt"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
)

// Heading returns the date and the place in the plan: "Mon 7 Dec, week 1 of 6".
func (d *Day) Heading() string {
	p := d.Season.Plan
	where := fmt.Sprintf("week %d of %d", d.Week, p.Count)
	switch {
	case d.Week < 1:
		where = "before the plan, which starts on " + p.Starts.Short()
	case d.Week > p.Count:
		where = "after the plan, which ended on " + p.End().Short()
	}
	if _, lighter := p.IsLighter(d.Week); lighter {
		where += ", a lighter one"
	}
	return d.Date.Short() + ", " + where
}

// Dose returns a day's session with its length and dose.
func (d *Day) Dose(day *season.Day) string {
	s := plan.Of(d.Season.Plan.Session(day.Planned))
	text := fmt.Sprintf("%s, %s, %s", safetext.Clean(s.Session.Title), units.Clock(s.Total), units.Count(s.Totals.Sets, "set"))
	if s.Contacts > 0 {
		text += ", " + units.Count(s.Contacts, "foot contact")
	}
	if at := day.Slot.At; at != nil {
		text = at.String() + " " + text
	}
	return text
}

// Lines returns the day in sentences: what is today's, what is next, what was
// missed.
func (d *Day) Lines() []string {
	lines := []string{safetext.Clean(d.Season.Plan.Title), d.Heading()}
	for _, m := range d.Matches {
		when := "today"
		if m.Date != d.Date {
			when = "tomorrow"
		}
		lines = append(lines, "a match "+when+clock(m.At))
	}
	if len(d.Planned) == 0 {
		lines = append(lines, "today: nothing is planned")
	}
	for _, p := range d.Planned {
		lines = append(lines, "today: "+d.Dose(p)+state(p))
	}
	if d.Next != nil {
		lines = append(lines, "next: "+d.Next.Date.Short()+", "+d.Dose(d.Next))
	}
	for _, m := range d.Missed {
		lines = append(lines, fmt.Sprintf("not done: %s, %s; %s", m.Date.Short(), safetext.Clean(d.Season.Plan.Session(m.Planned).Title), m.Why))
	}
	return lines
}

// state says of a session that is not open how it stands.
func state(d *season.Day) string {
	if d.State == season.Due || d.State == season.Ahead {
		return ""
	}
	return " (" + string(d.State) + ")"
}

// clock writes a time of day with "at" before it, or nothing.
func clock(t *units.TimeOfDay) string {
	if t == nil {
		return ""
	}
	return " at " + t.String()
}

package preview

import (
	"slices"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// WeeksDocument is the preview of a plan of weeks as JSON. Times are in
// seconds, texts in the file's words.
type WeeksDocument struct {
	Title   string         `json:"title"`
	Starts  units.Date     `json:"starts"`
	Weeks   []WeekDocument `json:"weeks"`
	Matches []units.Date   `json:"matches"` // day by day, also those outside the plan
	Totals
	Counted bool `json:"contacts_counted"` // false: there are jumps whose contacts are not in Contacts
}

// WeekDocument is one week. The shares are there in a lighter week alone:
// what was asked, and what was reached of the contacts and of the work of the
// same week if it were no lighter one; null if there would be none, or if they
// are not all counted.
type WeekDocument struct {
	Week    int        `json:"week"`
	From    units.Date `json:"from"`
	Lighter bool       `json:"lighter"`
	Hold    bool       `json:"hold"`
	Totals
	Counted bool              `json:"contacts_counted"` // as for the plan
	Days    []DayDocument     `json:"days"`
	LeftOut []LeftOutDocument `json:"left_out"`
	Keep    *KeepDocument     `json:"keep,omitempty"`
}

// KeepDocument is what a lighter week keeps, in percent.
type KeepDocument struct {
	Asked    float64  `json:"asked_pct"`
	Contacts *float64 `json:"contacts_pct"`
	Work     *float64 `json:"work_pct"`
}

// DayDocument is one session on its day.
type DayDocument struct {
	Date    units.Date `json:"date"`
	At      string     `json:"at,omitempty"`
	Session string     `json:"session"` // as written in the file
	Title   string     `json:"title"`
	Totals
	Counted bool `json:"contacts_counted"` // as for the plan
}

// LeftOutDocument is a session that falls on a day away.
type LeftOutDocument struct {
	Date    units.Date `json:"date"`
	Session string     `json:"session"`
}

// OfWeeks returns the preview of a plan of weeks.
func OfWeeks(p *plan.Weeks) WeeksDocument {
	d := WeeksDocument{Title: p.Title, Starts: p.Starts, Weeks: []WeekDocument{}, Matches: matchDays(p.Plan), Totals: totals(p.Totals), Counted: AllCounted(p)}
	for _, w := range p.List {
		d.Weeks = append(d.Weeks, weekDocument(p, w))
	}
	return d
}

// Only returns the document with one week in it, and its figures as those of
// the whole.
func (d WeeksDocument) Only(week int) WeeksDocument {
	d.Weeks = d.Weeks[week-1 : week]
	d.Totals, d.Counted = d.Weeks[0].Totals, d.Weeks[0].Counted
	return d
}

func weekDocument(p *plan.Weeks, w plan.Week) WeekDocument {
	d := WeekDocument{Week: w.Number, From: w.From, Lighter: w.Lighter, Hold: w.Hold, Totals: totals(w.Totals), Counted: weekCounted(w),
		Days: []DayDocument{}, LeftOut: []LeftOutDocument{}}
	for _, s := range w.Sessions {
		day := DayDocument{Date: s.Date, Session: s.Slot.Session, Title: s.Session.Title, Totals: totals(s.Totals), Counted: dayCounted(s)}
		if s.Slot.At != nil {
			day.At = s.Slot.At.String()
		}
		d.Days = append(d.Days, day)
	}
	for _, l := range w.LeftOut {
		d.LeftOut = append(d.LeftOut, LeftOutDocument{l.Date, l.Slot.Session})
	}
	if keep, ok := p.IsLighter(w.Number); ok {
		d.Keep = &KeepDocument{100 * keep.Share(), contactsKept(w), share(w.Work, w.Full.Work)}
	}
	return d
}

// AllCounted reports whether every jump of a plan has its contacts counted.
func AllCounted(p *plan.Weeks) bool {
	return !slices.ContainsFunc(p.List, func(w plan.Week) bool { return !weekCounted(w) })
}

// weekCounted reports whether every jump of a week has its contacts counted.
func weekCounted(w plan.Week) bool {
	return !slices.ContainsFunc(w.Sessions, func(s plan.DayPlan) bool { return !dayCounted(s) })
}

func dayCounted(s plan.DayPlan) bool { return jumps.AllCounted(s.Session.Blocks...) }

// contactsKept returns the share of its contacts that a lighter week keeps, nil
// if they are not all counted or there are none.
func contactsKept(w plan.Week) *float64 {
	if !weekCounted(w) {
		return nil
	}
	return share(w.Contacts, w.Full.Contacts)
}

// share returns part in percent of whole, or nil if there is no whole.
func share[T ~int | ~int64](part, whole T) *float64 {
	if whole == 0 {
		return nil
	}
	s := 100 * float64(part) / float64(whole)
	return &s
}

// matchDays returns the days of competition in order, each once.
func matchDays(p *weeks.Plan) []units.Date {
	days := []units.Date{}
	for _, m := range p.Matches {
		days = append(days, m.Date)
	}
	slices.Sort(days)
	return slices.Compact(days)
}

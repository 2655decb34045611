package weeks

import (
	"cmp"
	"slices"
	"time"

	"coldfloor/internal/units"
)

// Planned is one session on its day.
type Planned struct {
	Slot  *Slot
	Week  int        // that Date falls in: it is listed and counted there
	Dose  int        // the week of the pattern, whose dose it has
	Date  units.Date // on which it is done
	First units.Date // on which the pattern has it; Date unless it was moved
	Place int        // on its date, from 1; 0 if it is left out
}

// Moved reports whether the session is done on another day than the pattern's.
func (d Planned) Moved() bool { return d.Date != d.First }

// Week is one week of a plan.
type Week struct {
	Number  int
	From    units.Date
	Lighter bool
	Hold    bool
	Days    []Planned // by date; on one date those without a time first, then by time, pattern's date, as typed
	LeftOut []Planned // those on a day away, by the pattern's date
}

// To returns the last day of the week.
func (w Week) To() units.Date { return w.From + 6 }

// Weeks returns every week with its sessions. The result is the plan's own and
// not to be changed.
func (p *Plan) Weeks() []Week { return p.weeks }

// Days returns every session that is to be done, in order.
func (p *Plan) Days() []Planned {
	var all []Planned
	for _, w := range p.weeks {
		all = append(all, w.Days...)
	}
	return all
}

// On returns the sessions of one day, in order.
func (p *Plan) On(d units.Date) []Planned {
	var found []Planned
	for _, day := range p.Days() {
		if day.Date == d {
			found = append(found, day)
		}
	}
	return found
}

// firstDate returns the day of a week on which a weekday falls.
func (p *Plan) firstDate(week int, day time.Weekday) units.Date {
	after := (int(day) - int(p.Starts.Weekday()) + 7) % 7
	return p.Starts + units.Date(7*(week-1)+after)
}

// pattern returns what the pattern has, before anything is moved or left out,
// by date and as typed.
func (p *Plan) pattern() []Planned {
	var all []Planned
	for w := 1; w <= p.Count; w++ {
		for i := range p.Slots {
			s := &p.Slots[i]
			if s.Only == nil || slices.Contains(s.Only, w) {
				d := p.firstDate(w, s.Weekday)
				all = append(all, Planned{Slot: s, Week: w, Dose: w, Date: d, First: d})
			}
		}
	}
	slices.SortStableFunc(all, func(a, b Planned) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), cmp.Compare(a.Slot.Place, b.Slot.Place))
	})
	return all
}

// schedule moves and leaves out what the file says, and keeps the weeks.
func (p *Plan) schedule() {
	to := map[units.Date]units.Date{}
	for _, m := range p.Moves {
		to[m.From] = m.To
	}
	p.weeks = make([]Week, p.Count)
	for i := range p.weeks {
		n := i + 1
		_, lighter := p.IsLighter(n)
		p.weeks[i] = Week{Number: n, From: p.Starts + units.Date(7*i), Lighter: lighter, Hold: p.IsHold(n)}
	}
	for _, d := range p.pattern() {
		if date, ok := to[d.First]; ok {
			d.Date, d.Week = date, p.WeekOf(date)
		}
		if d.Week < 1 || d.Week > p.Count {
			continue // the move is an error
		}
		w := &p.weeks[d.Week-1]
		if p.IsAway(d.Date) {
			w.LeftOut = append(w.LeftOut, d)
			continue
		}
		w.Days = append(w.Days, d)
	}
	for i := range p.weeks {
		number(p.weeks[i].Days)
	}
}

// number puts the sessions of a week in order and gives each its place on its
// day.
func number(days []Planned) {
	slices.SortStableFunc(days, func(a, b Planned) int {
		return cmp.Or(cmp.Compare(a.Date, b.Date), compareTimes(a.Slot.At, b.Slot.At),
			cmp.Compare(a.First, b.First), cmp.Compare(a.Slot.Place, b.Slot.Place))
	})
	for i := range days {
		days[i].Place = 1
		if i > 0 && days[i-1].Date == days[i].Date {
			days[i].Place = days[i-1].Place + 1
		}
	}
}

// compareTimes puts no time before every time.
func compareTimes(a, b *units.TimeOfDay) int {
	minutes := func(t *units.TimeOfDay) int {
		if t == nil {
			return -1
		}
		return int(*t)
	}
	return cmp.Compare(minutes(a), minutes(b))
}

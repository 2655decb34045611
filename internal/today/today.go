// Package today answers a player's one question of a plan of weeks: what is
// today's? It says what is planned and not done, what is next, and of what was
// missed whether it may be done today. It decides nothing.
package today

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// Day is one day of a player with a plan of weeks.
type Day struct {
	Season *season.Season
	Date   units.Date
	Week   int // of the plan; 0 before it, and above Season.Plan.Count after it

	Planned []*season.Day // of the date, in order; none if there are none
	Current *season.Day   // the first of Planned that is not done; nil: none is left
	Next    *season.Day   // the first after the date; nil: none
	Missed  []Missed      // of the seven days before, the latest first
	Matches []weeks.Match // on the date and the day after
}

// Missed is a session of an earlier date that was not done.
type Missed struct {
	*season.Day
	Offer bool   // it may be done on the date, beside no other session
	Why   Reason // why, or why not
}

// lookBack is how many days a missed session is still spoken of.
const lookBack = 7

// Of returns the day that it is now. Interval is the least time from one
// session with jumps to the next.
func Of(p *weeks.Plan, runs []*journal.Run, now time.Time, interval time.Duration) *Day {
	return on(p, runs, units.DateOf(now), now, interval)
}

// On returns another day, as if it were noon of it.
func On(p *weeks.Plan, runs []*journal.Run, date units.Date, interval time.Duration) *Day {
	return on(p, runs, date, date.In(time.Local, 12*60), interval)
}

func on(p *weeks.Plan, runs []*journal.Run, date units.Date, now time.Time, interval time.Duration) *Day {
	s := season.Of(p, runs, date)
	d := &Day{Season: s, Date: date, Week: p.WeekOf(date), Planned: s.On(date)}
	for _, planned := range d.Planned {
		if d.Current == nil && planned.State == season.Due {
			d.Current = planned
		}
	}
	d.Next = s.Next()
	for _, m := range p.Matches {
		if m.Date == date || m.Date == date+1 {
			d.Matches = append(d.Matches, m)
		}
	}
	d.missed(runs, now, interval)
	return d
}

// missed finds what was not done. At most one session is offered.
func (d *Day) missed(runs []*journal.Run, now time.Time, interval time.Duration) {
	open := append(d.Season.Missed(), d.Season.Open()...)
	offered := false
	for i := len(open) - 1; i >= 0; i-- {
		o := open[i]
		if d.Date-o.Date > lookBack {
			continue
		}
		m := Missed{Day: o, Why: Reason{Kind: OneADay}}
		if !offered {
			m.Offer, m.Why = d.offer(o, runs, now, interval)
		}
		offered = offered || m.Offer
		d.Missed = append(d.Missed, m)
	}
}

// Started returns what the journal says of a run of a day's session.
func Started(p *weeks.Plan, d weeks.Planned) *journal.Weeks {
	return &journal.Weeks{Title: p.Title, Starts: p.Starts.String(), Week: d.Week, Date: d.Date.String(), Place: d.Place, Session: d.Slot.Session}
}

// Session lays out the session of a day, with a text of its own, so that a run
// of it can be resumed.
func Session(p *weeks.Plan, d weeks.Planned) (*plan.Plan, error) {
	s, err := p.Written(d)
	if err != nil {
		return nil, err
	}
	return plan.Of(s), nil
}

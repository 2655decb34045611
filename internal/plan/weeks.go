package plan

import (
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// Weeks is a plan of weeks with the plan of each of its sessions.
type Weeks struct {
	*weeks.Plan
	List   []Week
	Totals // of all sessions that are to be done
}

// Week is one week and what is done in it.
type Week struct {
	weeks.Week
	Sessions []DayPlan // as Week.Days
	Full     Totals    // as if the week were no lighter one
	Totals
}

// DayPlan is one session on its day.
type DayPlan struct {
	weeks.Planned
	*Plan // shared by the days of one week that have the same session
}

// OfWeeks lays out every session of a plan of weeks. What is left out counts
// nowhere.
func OfWeeks(p *weeks.Plan) *Weeks {
	w := &Weeks{Plan: p}
	plans := map[*sessions.Session]*Plan{}
	of := func(s *sessions.Session) *Plan {
		if plans[s] == nil {
			plans[s] = Of(s)
		}
		return plans[s]
	}
	for _, week := range p.Weeks() {
		out := Week{Week: week}
		for _, d := range week.Days {
			day := DayPlan{d, of(p.Session(d))}
			out.Sessions = append(out.Sessions, day)
			out.Totals.Add(day.Totals)
			out.Full.Add(of(p.Full(d)).Totals)
		}
		w.List = append(w.List, out)
		w.Totals.Add(out.Totals)
	}
	return w
}

// Add adds the dose and the length of something else.
func (t *Totals) Add(o Totals) {
	t.Total += o.Total
	t.Work += o.Work
	t.Rest += o.Rest
	t.Change += o.Change
	t.Sets += o.Sets
	t.Reps += o.Reps
	t.Contacts += o.Contacts
}

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
	*Plan // its steps and sets are shared by days that have the same doses
}

// OfWeeks lays out every session of a plan of weeks. What is left out counts
// nowhere.
func OfWeeks(p *weeks.Plan) *Weeks {
	w := &Weeks{Plan: p}
	plans := map[*sessions.Session]*Plan{}
	same := map[*sessions.Block]*Plan{} // by the first block: sessions of several weeks share all of them
	of := func(s *sessions.Session) *Plan {
		if p := plans[s]; p != nil {
			return p
		}
		first := &s.Blocks[0]
		if same[first] == nil {
			same[first] = Of(s)
		}
		p := *same[first]
		p.Session = s
		plans[s] = &p
		return &p
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

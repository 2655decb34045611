package next

import (
	"slices"

	"coldfloor/internal/journal"
	"coldfloor/internal/jumps"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// Of proposes a player's week of the plan from what is known of the week before it.
func Of(s *season.Season, f Facts, runs []*journal.Run, l Limits) Proposal {
	p := Propose(f, l)
	p.plan = s.Plan
	if f.Next >= 1 && f.Next <= s.Plan.Count {
		w := weekOf(s, runs, f.Next)
		w.Most = l.JumpDays
		p.Days = w.Propose()
	}
	return p
}

// weekOf returns a week of the plan with what it has to keep clear of: what was
// really done up to today, and what is planned from then on.
func weekOf(s *season.Season, runs []*journal.Run, week int) Week {
	p := s.Plan
	w := Week{First: p.Starts + units.Date(7*(week-1))}
	for _, d := range p.Days() {
		jump := jumps.Any(p.Session(d))
		switch in := int(d.Date - w.First); {
		case in >= 0 && in <= 6:
			w.addDay(d.Date, jump)
		case jump && d.Date > s.Today:
			w.Jumps = append(w.Jumps, d.Date)
		}
	}
	for r := range journal.Counting(runs) {
		if at, ok := r.Jumped(); ok {
			w.Jumps = append(w.Jumps, units.DateOf(at))
		}
	}
	for _, m := range p.Matches {
		if near := int(m.Date - w.First); near >= -6 && near <= 13 {
			w.Matches = append(w.Matches, m.Date)
		}
	}
	for i := range units.Date(7) {
		if p.IsAway(w.First + i) {
			w.Away = append(w.Away, w.First+i)
		}
	}
	return w
}

// addDay adds a session's day, once.
func (w *Week) addDay(date units.Date, jump bool) {
	i := slices.IndexFunc(w.Days, func(d Day) bool { return d.Date == date })
	if i < 0 {
		w.Days = append(w.Days, Day{Date: date, Jumps: jump})
		return
	}
	w.Days[i].Jumps = w.Days[i].Jumps || jump
}

// Amendment returns what the proposal would have the player's plan say: hold,
// lighter weeks, and days moved from the dates that the pattern gives.
func (p Proposal) Amendment(plan *weeks.Plan) weeks.Amendment {
	var a weeks.Amendment
	switch p.Kind {
	case Hold:
		a.Hold = []int{p.Week}
	case Less:
		for i, keep := range p.Keep {
			if p.Week+i <= plan.Count {
				a.Lighter = append(a.Lighter, weeks.Lighter{Week: p.Week + i, Keep: weeks.Whole(keep)})
			}
		}
	}
	if p.Days == nil {
		return a
	}
	for _, m := range p.Days.Moves {
		for _, d := range plan.On(m.From) {
			move := weeks.Move{From: d.First, To: m.To}
			if !slices.Contains(a.Moves, move) {
				a.Moves = append(a.Moves, move)
			}
		}
	}
	return a
}

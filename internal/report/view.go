package report

import (
	"slices"

	"coldfloor/internal/review"
)

// seed is how many weeks before those in view go into the weighted averages,
// so that they do not hang on how many weeks are looked at: after 26 weeks the
// first day's part in the longer one is below 1 in 100,000, as (27/29)^182.
const seed = 26

// WeeksFor returns how many weeks are to be reviewed for so many in view.
func WeeksFor(view int) int { return view + seed }

// InView returns the squad with no more than the last weeks of every player,
// this one among them. Totals stay those of all sessions.
func InView(s *review.Squad, weeks int) *review.Squad {
	view := *s
	view.Players = make([]*review.Player, len(s.Players))
	for i, p := range s.Players {
		view.Players[i] = inView(p, weeks)
	}
	return &view
}

func inView(p *review.Player, weeks int) *review.Player {
	if len(p.Weeks) <= weeks {
		return p
	}
	q := *p
	q.Weeks = p.Weeks[len(p.Weeks)-weeks:]
	from := q.Weeks[0].Monday.Format(dateOnly)
	if i := slices.IndexFunc(p.Days, func(d review.Day) bool { return d.Date.Format(dateOnly) >= from }); i > 0 {
		q.Days = p.Days[i:]
	}
	if i := slices.IndexFunc(p.Recent, func(s *review.Session) bool { return s.Start.Format(dateOnly) < from }); i >= 0 {
		q.Recent = p.Recent[:i]
	}
	return &q
}

package next

import (
	"slices"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/runs"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// lookBack is how far back runs are looked at. The last one is kept in any
// case, since it tells how long a player was away.
const lookBack = 400 * 24 * time.Hour

// Squad is the runs of every player that a proposal rests on, by the name
// displayed.
type Squad map[string][]*journal.Run

// Read reads the runs of a pile of journals as of now.
func Read(pile *runs.Pile, now time.Time) (Squad, error) {
	squad := Squad{}
	err := pile.Each(func(r runs.Run) error {
		if !r.Counts() && r.Fate() != journal.Empty {
			return nil
		}
		all := squad[r.Player]
		recent := func(x *journal.Run) bool { return now.Sub(x.Start) < lookBack }
		switch {
		case recent(r.Run):
			all = slices.DeleteFunc(all, func(x *journal.Run) bool { return !recent(x) && x.Start.Before(r.Start) })
			all = append(all, r.Run)
		case len(all) == 0:
			all = append(all, r.Run)
		case len(all) == 1 && !recent(all[0]) && all[0].Start.Before(r.Start):
			all[0] = r.Run
		}
		squad[r.Player] = all
		return nil
	})
	return squad, err
}

// Propose proposes the week of the plan for every player, by name.
func (s Squad) Propose(plan *weeks.Plan, week int, now time.Time, l Limits) []Proposal {
	var all []Proposal
	for player, played := range s {
		held := season.Of(plan, played, units.DateOf(now))
		all = append(all, Of(held, FactsOf(held, player, played, week, now, l), played, l))
	}
	slices.SortFunc(all, func(a, b Proposal) int { return strings.Compare(a.Player, b.Player) })
	return all
}

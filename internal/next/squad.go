package next

import (
	"fmt"
	"maps"
	"slices"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/players"
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

// Propose proposes the week of the plan for every player, by name: for those of
// the list with their own days away, whether they have logged anything or not.
// The error names a player whose days away make the plan no valid one.
func (s Squad) Propose(plan *weeks.Plan, week int, now time.Time, l Limits, list []players.Player) ([]Proposal, error) {
	names := slices.Collect(maps.Keys(s))
	for _, p := range list {
		if !slices.ContainsFunc(names, func(n string) bool { return players.Same(n, p.Name) }) {
			names = append(names, p.Name)
		}
	}
	slices.Sort(names)
	var all []Proposal
	for _, name := range names {
		own := plan
		if p, ok := players.Find(list, name); ok {
			var err error
			if own, err = plan.ForPlayer(p.Away); err != nil {
				return nil, fmt.Errorf("with the days away of %s the plan is not valid: %w", name, err)
			}
		}
		held := season.Of(own, s[name], units.DateOf(now))
		all = append(all, Of(held, FactsOf(held, name, s[name], week, now, l), s[name], l))
	}
	return all, nil
}

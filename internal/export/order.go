package export

import (
	"cmp"
	"slices"

	"coldfloor/internal/runs"
)

// All writes every run of a pile: by player and then by time, or if the
// journals were more than memory is given, in the order of the runs' names.
func (e *Exporter) All(p *runs.Pile) error {
	if !p.InMemory() {
		return p.Each(e.Add)
	}
	var all []runs.Run
	if err := p.Each(func(r runs.Run) error { all = append(all, r); return nil }); err != nil {
		return err
	}
	slices.SortFunc(all, func(a, b runs.Run) int {
		return cmp.Or(cmp.Compare(runs.Key(a.Player), runs.Key(b.Player)), a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID))
	})
	for _, r := range all {
		if err := e.Add(r); err != nil {
			return err
		}
	}
	return nil
}

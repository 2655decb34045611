package journal

import (
	"cmp"
	"slices"
)

// Fold puts lines together into the runs they belong to. Lines of several runs
// may interleave and may come in any order; a line that stands twice counts
// once. The zero Fold is ready to use.
type Fold struct {
	lines map[string][]Entry
}

// Add takes one line.
func (f *Fold) Add(e Entry) {
	if f.lines == nil {
		f.lines = map[string][]Entry{}
	}
	e.Text = nil
	f.lines[e.Run] = append(f.lines[e.Run], e)
}

// Runs returns the runs, the earliest first, withdrawn ones among them, and
// what was wrong with their lines.
func (f *Fold) Runs() ([]*Run, []error) {
	var problems []error
	runs := make([]*Run, 0, len(f.lines))
	for _, lines := range f.lines {
		run, errs := build(lines)
		runs = append(runs, run)
		problems = append(problems, errs...)
	}
	slices.SortFunc(runs, func(a, b *Run) int {
		return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID))
	})
	return runs, problems
}

// Compare orders places as a plan does.
func (p Place) Compare(q Place) int {
	return cmp.Or(cmp.Compare(p.Block, q.Block), cmp.Compare(p.Round, q.Round), cmp.Compare(p.Exercise, q.Exercise))
}

package journal

import (
	"cmp"
	"iter"
	"os"
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

// FoldAll folds every line of seq. The problems hold a *Damage for each line
// that counts for nothing; err is what kept it from reading on.
func FoldAll(seq iter.Seq2[Entry, error]) (runs []*Run, problems []error, err error) {
	var f Fold
	for e, lineErr := range seq {
		switch d, ok := lineErr.(*Damage); {
		case ok:
			problems = append(problems, d)
		case lineErr != nil:
			err = lineErr
		default:
			f.Add(e)
		}
	}
	runs, more := f.Runs()
	return runs, append(problems, more...), err
}

// Load reads the journal at path into runs, the earliest first. A journal that
// does not exist is an empty one.
func Load(path string) (runs []*Run, problems []error, err error) {
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	return FoldAll(Read(f))
}

// Compare orders places as a plan does.
func (p Place) Compare(q Place) int {
	return cmp.Or(cmp.Compare(p.Block, q.Block), cmp.Compare(p.Round, q.Round), cmp.Compare(p.Exercise, q.Exercise))
}

package journal

import (
	"cmp"
	"fmt"
	"iter"
	"os"
	"slices"
	"time"

	"coldfloor/internal/units"
)

// Fold puts lines together into the runs they tell of. Lines of several runs
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

// build makes a run of its lines.
func build(lines []Entry) (*Run, []error) {
	if byN := func(a, b Entry) int { return cmp.Compare(a.N, b.N) }; !slices.IsSortedFunc(lines, byN) {
		slices.SortStableFunc(lines, byN)
	}
	b := builder{run: &Run{ID: lines[0].Run, State: Unfinished}, last: map[Place]int{}, easier: map[Exercise]bool{}}
	var problems []error
	for i, e := range lines {
		if i > 0 && e.N == lines[i-1].N {
			if e.sum != lines[i-1].sum {
				problems = append(problems, fmt.Errorf("lines %d and %d both are line %d of run %s and differ; the first counts",
					lines[i-1].Number, e.Number, e.N, e.Run))
				lines[i] = lines[i-1]
			}
			continue
		}
		b.add(&e.Line)
	}
	return b.done(), problems
}

// builder is a run in the making.
type builder struct {
	run    *Run
	last   map[Place]int // index into run.Sets
	easier map[Exercise]bool

	elapsed   time.Duration // of the processes before
	began, at time.Time     // of the process at hand: its first and its latest line
	length    *time.Duration
	start     *time.Time
	latest    Place
}

// add takes the run's lines in order, each once.
func (b *builder) add(l *Line) {
	r := b.run
	if r.LastN == 0 {
		r.Start, b.began = l.At, l.At
	}
	r.LastN = l.N
	switch l.Event {
	case EventRating, EventCorrect, EventWithdraw, EventRestore:
		b.amend(l)
		return
	}
	if l.Event == EventResume && l.Resume.Restart {
		b.elapsed += b.at.Sub(b.began)
		b.began = l.At
	}
	b.at, r.Clock = l.At, units.Seconds(l.Clock)
	switch l.Event {
	case EventStarted:
		r.Started = l.Started
	case EventSet:
		b.set(l.Set)
	case EventRest:
		r.Rests = append(r.Rests, *l.Rest)
	case EventPause:
		r.Pauses++
	case EventVariant:
		b.easier[Exercise{Block: l.Variant.Block, Exercise: l.Variant.Exercise}] = l.Variant.Easier
	case EventFinish:
		r.State, r.Elapsed = State(l.Finish.Outcome), units.Seconds(l.Finish.ElapsedS)
	}
}

// set keeps the set that was done last of its place.
func (b *builder) set(s *Set) {
	i, again := b.last[s.Place]
	if !again {
		i = len(b.run.Sets)
		b.last[s.Place] = i
		b.run.Sets = append(b.run.Sets, Set{})
	}
	b.run.Sets[i] = *s
	b.latest = s.Place
}

// amend takes a line that was written about the run.
func (b *builder) amend(l *Line) {
	r := b.run
	r.Amendments = append(r.Amendments, *l)
	switch l.Event {
	case EventRating:
		r.Rating.merge(l.Rating)
	case EventCorrect:
		if l.Correct.At != nil {
			b.start = l.Correct.At
		}
		if l.Correct.LengthS != nil {
			d := units.Seconds(*l.Correct.LengthS)
			b.length = &d
		}
	case EventWithdraw:
		r.Withdrawn = true
	case EventRestore:
		r.Withdrawn = false
	}
}

// done returns the run, with what follows from all its lines.
func (b *builder) done() *Run {
	r := b.run
	if r.State == Unfinished {
		r.Elapsed = b.elapsed + b.at.Sub(b.began)
	}
	if b.start != nil {
		r.Start = *b.start
	}
	if b.length != nil {
		r.Elapsed = *b.length
	}
	slices.SortFunc(r.Sets, func(x, y Set) int { return x.Place.Compare(y.Place) })
	r.lastSet = slices.IndexFunc(r.Sets, func(s Set) bool { return s.Place == b.latest })
	for x, on := range b.easier {
		if on {
			r.Easier = append(r.Easier, x)
		}
	}
	slices.SortFunc(r.Easier, func(x, y Exercise) int {
		return cmp.Or(cmp.Compare(x.Block, y.Block), cmp.Compare(x.Exercise, y.Exercise))
	})
	return r
}

// Compare orders places as a plan does.
func (p Place) Compare(q Place) int {
	return cmp.Or(cmp.Compare(p.Block, q.Block), cmp.Compare(p.Round, q.Round), cmp.Compare(p.Exercise, q.Exercise))
}

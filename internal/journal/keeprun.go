package journal

import (
	"slices"
	"time"

	"coldfloor/internal/compact"
)

// space is where the runs of an index that is read are put: a few large pieces
// in place of many small ones.
type space struct {
	runs    []Run
	leans   []lean
	numbers []int
	rpes    []float64
	said    []Statement
	days    []Day
	extents []extent
	chunk   int // how many are got at least at a time
}

// piece cuts n off the space that is left, of which more is got by the chunk.
func piece[T any](left *[]T, n, chunk int) []T {
	if n > len(*left) {
		*left = make([]T, max(n, chunk))
	}
	p := (*left)[:n:n]
	*left = (*left)[n:]
	return p
}

// states is every State by its number.
var states = []State{Complete, Stopped, Interrupted, Unfinished}

// What is there of a run that most runs have not, or the other way round.
const (
	hasRPE = 1 << iota
	hasPain
	isPainful
	hasEasier
	hasSaid
	isWithdrawn
	wasRemoved
	hasProblems
	isCorrected
	hasWorked
	hasJumped
	hasMissing
	hasRated
	saidNone // nothing but that there was no pain, once
	isOpen   // without an end, and not withdrawn
	isCounted
)

// traits returns what is there of r.
func traits(r *Run) (has int) {
	none, l := none(r.Said), r.lean
	if l == nil { // a run that was read whole
		_, jumped := r.Jumped()
		l = &lean{worked: r.anyWorked(), jumped: jumped}
	}
	for _, x := range [...]struct {
		bit   int
		there bool
	}{
		{hasRPE, r.Rating.RPE != nil}, {hasPain, r.Rating.Pain != nil}, {isPainful, r.Painful()}, {hasEasier, len(r.Easier) > 0},
		{hasSaid, len(r.Said) > 0 && !none}, {isWithdrawn, r.Withdrawn}, {wasRemoved, !r.Removed.IsZero()}, {hasProblems, len(l.problems) > 0},
		{isCorrected, r.length}, {hasWorked, l.worked}, {hasJumped, l.jumped}, {hasMissing, r.Missing > 0 || r.Differ > 0},
		{hasRated, r.Rating.Rounds != nil}, {saidNone, none}, {isOpen, r.State == Unfinished && !r.Withdrawn}, {isCounted, r.Counts()},
	} {
		if x.there {
			has |= x.bit
		}
	}
	return has
}

// none reports whether all that was said is that there was no pain.
func none(said []Statement) bool {
	return len(said) == 1 && said[0].Pain != nil && !*said[0].Pain && said[0].Where == "" && said[0].Level == nil && said[0].Note == "" && !said[0].Slip
}

// run codes a lean run.
func (k *keeper) run(p **Run) {
	has := 0
	if k.Reading {
		*p = &piece(&k.space.runs, 1, 0)[0]
		(*p).lean = &piece(&k.space.leans, 1, 0)[0]
	} else {
		has = traits(*p)
	}
	r := *p
	k.Int(&has)
	k.Text(&r.ID)
	k.ref(&r.Started)
	k.Time(&r.Start)
	state := max(0, slices.Index(states, r.State))
	if k.Int(&state); state < 0 || state >= len(states) {
		k.Err, k.Buf = compact.ErrShort, nil
		return
	}
	r.State = states[state]
	k.int64((*int64)(&r.Elapsed))
	k.int64((*int64)(&r.Clock))
	k.Int(&r.Pauses)
	k.Int(&r.LastN)
	r.Withdrawn, r.length, r.lean.worked, r.lean.jumped = has&isWithdrawn != 0, has&isCorrected != 0, has&hasWorked != 0, has&hasJumped != 0
	k.said(r, has)
	k.Int(&r.lean.ended)
	k.near(&r.lean.end, r.Start)
	if r.lean.jumped {
		k.near(&r.lean.jumpedAt, r.Start)
	}
	k.later(r)
	k.seldom(r, has)
}

// seldom codes what most runs have not.
func (k *keeper) seldom(r *Run, has int) {
	if has&hasMissing != 0 {
		k.Int(&r.Missing)
		k.Int(&r.Differ)
	}
	if has&hasEasier != 0 {
		compact.List(&k.Coder, &r.Easier, func(e *Exercise) { k.Int(&e.Block); k.Int(&e.Exercise) })
	}
	if has&wasRemoved != 0 {
		k.Time(&r.Removed)
	}
	if has&hasProblems != 0 {
		compact.List(&k.Coder, &r.lean.problems, k.Text)
	}
}

// said codes what was said of a run.
func (k *keeper) said(r *Run, has int) {
	if has&hasRated != 0 {
		k.numbers(&r.Rating.Rounds)
	}
	if has&hasRPE != 0 {
		if k.Reading {
			r.Rating.RPE = &piece(&k.space.rpes, 1, k.space.chunk)[0]
		}
		k.Float(r.Rating.RPE)
	}
	if k.Reading && has&hasPain != 0 {
		painful := has&isPainful != 0
		r.Rating.Pain = &painful
	}
	if has&saidNone != 0 {
		if k.Reading {
			no := false
			r.Said = piece(&k.space.said, 1, k.space.chunk)
			r.Said[0].Pain = &no
		}
		k.near(&r.Said[0].At, r.Start)
	}
	if has&hasSaid != 0 {
		compact.List(&k.Coder, &r.Said, k.statement)
	}
}

func (k *keeper) statement(s *Statement) {
	k.Time(&s.At)
	compact.Optional(&k.Coder, &s.Pain, k.Bool)
	k.Text(&s.Where)
	compact.Optional(&k.Coder, &s.Level, k.Int)
	k.Text(&s.Note)
	k.Bool(&s.Slip)
}

// later codes the figures of a run so that they can be decoded later, if
// somebody asks for them.
func (k *keeper) later(r *Run) {
	if !k.Reading && r.lean.coded == nil {
		one := keeper{}
		one.figures(r.lean.own, r)
		r.lean.coded = one.Buf
	}
	n := len(r.lean.coded)
	if k.length(&n); k.Reading {
		r.lean.coded, k.Buf = k.Buf[:n:n], k.Buf[n:]
		return
	}
	k.Buf = append(k.Buf, r.lean.coded...)
}

// figures codes the figures of a run, and its place in the journal.
func (k *keeper) figures(f *figures, r *Run) {
	k.numbers(&f.rounds)
	k.count(&f.sets)
	k.count(&f.reps)
	k.count(&f.contacts)
	n := len(f.days)
	if k.length(&n); k.Reading {
		f.days = piece(&k.space.days, n, k.space.chunk)
	}
	for i := range f.days {
		d := &f.days[i]
		k.date(&d.Date)
		k.int64((*int64)(&d.Worked))
		k.Float(&d.Part)
		k.count(&d.Contacts)
	}
	n = len(f.extents)
	if k.length(&n); k.Reading {
		f.extents = piece(&k.space.extents, n, k.space.chunk)
	}
	for i := range f.extents {
		e := &f.extents[i]
		k.int64(&e.at)
		k.int64(&e.size)
		k.Int(&e.before)
	}
}

// length codes how many follow, each of which takes a byte at least.
func (k *keeper) length(n *int) {
	if k.Int(n); *n < 0 || k.Reading && *n > len(k.Buf) {
		k.Err, k.Buf, *n = compact.ErrShort, nil, 0
	}
}

// numbers codes a list of numbers; nil stays nil.
func (k *keeper) numbers(list *[]int) {
	n := len(*list) + 1
	if *list == nil {
		n = 0
	}
	k.length(&n)
	if n == 0 {
		return
	}
	if k.Reading {
		*list = piece(&k.space.numbers, n-1, k.space.chunk)
	}
	for i := range *list {
		k.Int(&(*list)[i])
	}
}

// near codes a moment by how long it is after another, in that one's zone if
// it has the same offset.
func (k *keeper) near(p *time.Time, start time.Time) {
	after := int(p.Sub(start))
	offset := offsetOf(*p) - offsetOf(start)
	k.Int(&after)
	k.Int(&offset)
	if !k.Reading {
		return
	}
	*p = start.Add(time.Duration(after))
	if offset != 0 {
		*p = p.In(time.FixedZone("", offsetOf(start)+offset))
	}
}

package journal

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/units"
)

// amends reports whether a line was written about a run and not in it. Such
// lines of two copies that parted both stand.
func (e Event) amends() bool {
	switch e {
	case EventMeasure, EventRating, EventCorrect, EventWithdraw, EventRestore:
		return true
	}
	return false
}

// Build makes a run of its lines, which it may reorder: one at least, and all of
// one run. It keeps neither them nor their sets and rests. What is wrong with
// them is counted in Missing and Differ.
func Build(lines []Entry) *Run {
	r, _ := build(lines)
	return r
}

// Builder builds runs of which one is wanted at a time: each is valid until the
// next is built, except for its start and what was said of it. The zero Builder
// is ready.
type Builder struct {
	run    Run
	before []int
}

// Build is Build with the memory of the run before.
func (b *Builder) Build(lines []Entry) *Run {
	with := builder{run: &b.run, before: b.before[:0]}
	b.run = Run{Sets: b.run.Sets[:0], Rests: b.run.Rests[:0], Amendments: b.run.Amendments[:0]}
	with.build(lines)
	b.before = with.before
	return &b.run
}

// build makes a run of its lines, which it may reorder.
func build(lines []Entry) (*Run, []error) {
	b := builder{run: &Run{}}
	problems := b.build(lines)
	return b.run, problems
}

// build makes the run, which has nothing but memory.
func (b *builder) build(lines []Entry) (problems []error) {
	if byN := func(a, b Entry) int { return cmp.Compare(a.N, b.N) }; !slices.IsSortedFunc(lines, byN) {
		slices.SortStableFunc(lines, byN)
	}
	r := b.run
	r.ID, r.State = lines[0].Run, Unfinished
	b.makeRoom(lines)
	problems = b.gaps(lines)
	var about []*Line
	parted := 0 // number from which on copies parted; 0: none
	for len(lines) > 0 {
		n := 1
		for n < len(lines) && lines[n].N == lines[0].N {
			n++
		}
		event, amendments, err := settle(lines[:n])
		if err != nil {
			r.Differ++
			problems = append(problems, err)
		}
		if event != nil {
			b.add(event)
		}
		if parted == 0 && len(amendments) > 1 {
			parted = lines[0].N
		}
		about = append(about, amendments...)
		r.LastN = lines[0].N
		lines = lines[n:]
	}
	inTime(about, parted)
	for _, l := range about {
		b.amend(l)
	}
	b.finish()
	return problems
}

// makeRoom gets the memory of the sets and the rests at once.
func (b *builder) makeRoom(lines []Entry) {
	sets, rests := 0, 0
	for i := range lines {
		switch lines[i].Event {
		case EventSet:
			sets++
		case EventRest:
			rests++
		}
	}
	if sets > cap(b.run.Sets) {
		b.run.Sets = make([]Set, 0, sets)
	}
	if rests > cap(b.run.Rests) {
		b.run.Rests, b.before = make([]Rest, 0, rests), make([]int, 0, rests)
	}
}

// gaps reports the lines that are missing, by their numbers.
func (b *builder) gaps(lines []Entry) (problems []error) {
	last := 0
	for i := range lines {
		switch n := lines[i].N - last - 1; {
		case n == 1:
			problems = append(problems, fmt.Errorf("line %d of run %s is missing", last+1, b.run.ID))
			b.run.Missing++
		case n > 1:
			problems = append(problems, fmt.Errorf("lines %d to %d of run %s are missing", last+1, lines[i].N-1, b.run.ID))
			b.run.Missing += n
		}
		last = lines[i].N
	}
	return problems
}

// builder is a run in the making.
type builder struct {
	run    *Run
	easier map[Exercise]bool
	worked int   // sets so far in which work was begun
	before []int // of each rest: the sets before it in which work was begun

	elapsed   time.Duration // of the processes before
	began, at time.Time     // of the process at hand: its first and its latest line
	clockAt   time.Duration // session clock when it began
	start     *time.Time
}

// add takes the run's own lines in order, each once.
func (b *builder) add(l *Line) {
	r := b.run
	if b.began.IsZero() {
		r.Start, b.began = l.At, l.At
	}
	if l.Event == EventResume && l.Resume.Restart {
		b.elapsed += b.leg()
		b.began, b.clockAt = l.At, units.Seconds(l.Clock)
	}
	b.at, r.Clock = l.At, units.Seconds(l.Clock)
	switch l.Event {
	case EventStarted:
		r.Started = l.Started
	case EventSet:
		r.Sets = append(r.Sets, *l.Set)
		s := &r.Sets[len(r.Sets)-1]
		if s.At = l.At; s.worked() {
			b.worked++
		}
	case EventRest:
		r.Rests = append(r.Rests, *l.Rest)
		r.Rests[len(r.Rests)-1].At = l.At
		b.before = append(b.before, b.worked)
	case EventPause:
		r.Pauses++
	case EventVariant:
		if b.easier == nil {
			b.easier = map[Exercise]bool{}
		}
		b.easier[Exercise{Block: l.Variant.Block, Exercise: l.Variant.Exercise}] = l.Variant.Easier
	case EventFinish:
		r.State, r.Elapsed = State(l.Finish.Outcome), units.Seconds(l.Finish.ElapsedS)
	}
}

// leg returns how long the process at hand has taken: by the wall, and no less
// than the session's clock, for the wall's may have been set back.
func (b *builder) leg() time.Duration { return max(b.at.Sub(b.began), b.run.Clock-b.clockAt, 0) }

// amend takes a line that was written about the run.
func (b *builder) amend(l *Line) {
	r := b.run
	if r.Start.IsZero() {
		r.Start = l.At // nothing but amendments is left of it
	}
	if l.Event == EventMeasure {
		b.measure(l)
		return
	}
	r.Amendments = append(r.Amendments, *l)
	switch l.Event {
	case EventRating:
		r.say(l.Rating, l.At)
	case EventCorrect:
		if l.Correct.At != nil {
			b.start = l.Correct.At
		}
		if l.Correct.LengthS != nil {
			r.length = true
			b.elapsed = units.Seconds(*l.Correct.LengthS)
		}
	case EventWithdraw:
		r.Withdrawn, r.Removed = true, l.At
	case EventRestore:
		r.Withdrawn = false
	}
}

// measure takes a measured result, the place of an earlier one of the same try.
func (b *builder) measure(l *Line) {
	m := *l.Measure
	m.At = l.At
	all := b.run.Measures
	if i := slices.IndexFunc(all, func(x Measure) bool { return x.Place == m.Place && x.Side == m.Side && x.Try == m.Try }); i >= 0 {
		all[i] = m
		return
	}
	b.run.Measures = append(all, m)
}

// finish works out what follows from all lines.
func (b *builder) finish() {
	r := b.run
	switch {
	case r.length:
		r.Elapsed = b.elapsed
	case r.State == Unfinished:
		r.Elapsed = b.elapsed + b.leg()
	}
	if b.start != nil {
		b.move(b.start.Sub(r.Start))
		r.Start = *b.start
	}
	for i := range r.Rests {
		r.Rests[i].Left = b.before[i] == b.worked
	}
	for x, on := range b.easier {
		if on {
			r.Easier = append(r.Easier, x)
		}
	}
	slices.SortFunc(r.Easier, func(x, y Exercise) int {
		return cmp.Or(cmp.Compare(x.Block, y.Block), cmp.Compare(x.Exercise, y.Exercise))
	})
}

// move shifts the moments of what was done with a corrected start.
func (b *builder) move(by time.Duration) {
	zone := b.start.Location()
	for i := range b.run.Sets {
		s := &b.run.Sets[i]
		s.At = s.At.Add(by).In(zone)
	}
	for i := range b.run.Rests {
		s := &b.run.Rests[i]
		s.At = s.At.Add(by).In(zone)
	}
}

package check

import (
	"cmp"
	"slices"
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// set is a set of the plan with what it belongs to.
type set struct {
	plan.Set
	block      *sessions.Block
	exercise   *sessions.Exercise
	start, end time.Duration // from the first work step to the last
	longest    time.Duration // of its work steps
	before     time.Duration // since the end of the work before; 0 for the first set
	rested     bool          // a rest lies before it, not only a change
	kind       quality       // what it trains
	jump       bool
	prepares   bool // its block prepares or winds down
}

// fast reports whether a set is done at maximal power.
func (s set) fast() bool { return s.kind == power && !s.prepares }

// known is what the rules ask of an exercise and of its block, found out once:
// a plan may have thousands of sets of it.
type known struct {
	kind quality
	jump bool
}

// learn finds out what the session's exercises and blocks are.
func (c *checker) learn() {
	c.exercise = map[*sessions.Exercise]known{}
	for i := range c.s.Blocks {
		c.prepares = append(c.prepares, prepares(&c.s.Blocks[i]))
	}
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		c.exercise[e] = known{c.kindOf(b, e), jumps.Is(e)}
	})
}

// setsOf returns the sets of a plan in order.
func (c *checker) setsOf(p *plan.Plan) []set {
	sets := make([]set, len(p.Sets))
	for i, s := range p.Sets {
		b := &p.Session.Blocks[s.Block-1]
		e := &b.Exercises[s.Exercise-1]
		sets[i] = set{Set: s, block: b, exercise: e, start: p.Steps[s.First].Start, end: p.Steps[s.Last].End(),
			kind: c.exercise[e].kind, jump: c.exercise[e].jump, prepares: c.prepares[s.Block-1]}
		for _, step := range p.Steps[s.First : s.Last+1] {
			if step.Kind == plan.Work {
				sets[i].longest = max(sets[i].longest, step.Length)
			}
		}
		if i > 0 {
			sets[i].before = sets[i].start - sets[i-1].end
			sets[i].rested = slices.ContainsFunc(p.Steps[sets[i-1].Last:s.First], func(s plan.Step) bool { return s.Kind == plan.Rest })
		}
	}
	return sets
}

// setsIn returns the sets of a block, which counts from 1.
func (c *checker) setsIn(block int) []set {
	first, _ := slices.BinarySearchFunc(c.sets, block, func(s set, b int) int { return cmp.Compare(s.Block, b) })
	last, _ := slices.BinarySearchFunc(c.sets, block+1, func(s set, b int) int { return cmp.Compare(s.Block, b) })
	return c.sets[first:last]
}

// exercises calls f with every exercise of the session and its block.
func (c *checker) exercises(f func(b *sessions.Block, e *sessions.Exercise)) {
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		for j := range b.Exercises {
			f(b, &b.Exercises[j])
		}
	}
}

// listed collects what is to be said of several exercises in one finding,
// which stands at the first of them.
type listed struct {
	names []string
	at    yamlread.Pos
}

// add adds an exercise that the finding is about; its key causes it.
func (l *listed) add(e *sessions.Exercise, key string) {
	if len(l.names) == 0 {
		l.at = e.Marks.At(key)
	}
	if !slices.Contains(l.names, e.Name) {
		l.names = append(l.names, e.Name)
	}
}

// tell adds the finding if it is about any exercise; the format has a
// place for their list.
func (c *checker) tell(s Severity, l listed, format string) {
	if len(l.names) > 0 {
		c.add(s, l.at, figures{"exercises": l.names}, format, list(l.names, maxNames))
	}
}

// Package strip draws a session as one strip whose parts are as long as their
// time: work, rest and what lies between in the order they come. The screen
// and the preview draw it in cells, a sheet in shares of its width.
package strip

import (
	"time"

	"coldfloor/internal/plan"
)

// Detail is how finely a session is divided into stretches.
type Detail int

// The details, from the finest to the coarsest.
const (
	Steps  Detail = iota // every step
	Sets                 // both sides of a set and the switch between them are one
	Bouts                // all from one rest to the next is one
	Blocks               // all of a block but the rest after it is one
)

// Stretch is a part of a session that is drawn as one. A stretch of several
// steps is of the kind plan.Work.
type Stretch struct {
	Kind        plan.Kind
	Block       int           // from 1; 0 for the lead-in
	First, Last int           // indexes into Plan.Steps
	Start, End  time.Duration // on the session's clock
}

// Stretches divides a plan at the given detail. The stretches meet end to end
// and cover the whole plan, and none reaches from one block into the next.
func Stretches(p *plan.Plan, d Detail) []Stretch {
	var out []Stretch
	for i, s := range p.Steps {
		if n := len(out); n > 0 && joined(p, i, d) {
			last := &out[n-1]
			last.Kind, last.Last, last.End = plan.Work, i, s.End()
			continue
		}
		out = append(out, Stretch{Kind: s.Kind, Block: s.Block, First: i, Last: i, Start: s.Start, End: s.End()})
	}
	return out
}

// joined reports whether step i belongs to the stretch of the step before it.
func joined(p *plan.Plan, i int, d Detail) bool {
	before, s := p.Steps[i-1], p.Steps[i]
	if before.Block != s.Block || d == Steps {
		return false
	}
	switch d {
	case Sets:
		return s.Set >= 0 && s.Set == before.Set
	case Bouts:
		return s.Kind != plan.Rest && before.Kind != plan.Rest
	}
	return s.Kind != plan.Rest || i+1 < len(p.Steps) && p.Steps[i+1].Block == s.Block
}

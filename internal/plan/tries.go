package plan

import "coldfloor/sessions"

// Try is a result that a player is asked for: what came out of one side of a
// measured set.
type Try struct {
	Set      int // index into Plan.Sets
	Side     Side
	Number   int // of the tries of this exercise on this side that are practice, or that count; from 1
	Measure  sessions.Measure
	Way      string
	Practice bool
}

// Tries returns what is asked for after a set, in the order in which its sides
// are worked; none if nothing is measured in it. Sets of one name, measure and
// way count through, whatever blocks they stand in.
func (p *Plan) Tries(set int) []Try {
	e := p.exerciseOf(set)
	if e.Measure == "" {
		return nil
	}
	number := 1
	for i := range set {
		if x := p.exerciseOf(i); x.Name == e.Name && x.Measure == e.Measure && x.Way == e.Way && x.Tries == e.Tries {
			number++
		}
	}
	var list []Try
	for i := p.Sets[set].First; i <= p.Sets[set].Last; i++ {
		side := p.Steps[i].Side
		if p.Steps[i].Kind != Work {
			continue
		}
		if side == Alternate {
			side = Both
		}
		list = append(list, Try{Set: set, Side: side, Number: number, Measure: e.Measure, Way: e.Way, Practice: e.Tries == sessions.Practice})
	}
	return list
}

// exerciseOf returns the exercise of a set.
func (p *Plan) exerciseOf(set int) *sessions.Exercise {
	s := p.Sets[set]
	return &p.Session.Blocks[s.Block-1].Exercises[s.Exercise-1]
}

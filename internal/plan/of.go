package plan

import (
	"time"

	"coldfloor/sessions"
)

// Of lays a valid session out as a plan. It costs memory in proportion to the
// steps, which sessions.Parse has bounded.
func Of(s *sessions.Session) *Plan {
	steps, _ := sessions.Size(s)
	sets := 0
	for i := range s.Blocks {
		sets += s.Blocks[i].Rounds * len(s.Blocks[i].Exercises)
	}
	b := builder{p: &Plan{Session: s, Steps: make([]Step, 0, steps), Sets: make([]Set, 0, sets), Blocks: make([]BlockTotals, 0, len(s.Blocks))}}
	b.add(Step{Kind: LeadIn, Length: s.LeadIn, Set: -1})
	for i := range s.Blocks {
		b.block(i+1, i == len(s.Blocks)-1)
	}
	b.p.Total = b.at
	return b.p
}

// builder appends steps end to end; at is where the next one starts.
type builder struct {
	p  *Plan
	at time.Duration
}

// block lays out one block: its rounds, and the rest that follows each.
func (b *builder) block(number int, last bool) {
	blk := &b.p.Session.Blocks[number-1]
	b.p.Blocks = append(b.p.Blocks, BlockTotals{Title: blk.Title, Rounds: blk.Rounds, Start: b.at})
	for round := 1; round <= blk.Rounds; round++ {
		for i := range blk.Exercises {
			b.set(number, round, i+1)
			if i < len(blk.Exercises)-1 {
				b.between(number, round, &blk.Exercises[i], blk.Change)
			}
		}
		rest := Step{Kind: Rest, Length: blk.Rest, Block: number, Round: round, Set: -1}
		if round == blk.Rounds {
			rest.Length = blk.RestAfter
		}
		if round < blk.Rounds || !last {
			b.add(rest)
		}
	}
}

// between lays out what stands between two exercises of one round.
func (b *builder) between(number, round int, before *sessions.Exercise, change time.Duration) {
	s := Step{Kind: Change, Length: change, Block: number, Round: round, Set: -1}
	if before.Rest != nil {
		s.Kind, s.Length = Rest, *before.Rest
	}
	b.add(s)
}

// set lays out the work of one exercise in one round.
func (b *builder) set(block, round, exercise int) {
	e := &b.p.Session.Blocks[block-1].Exercises[exercise-1]
	n, length := e.Reps+e.RepsPerSide, e.Time+e.TimePerSide
	if n > 0 {
		length = time.Duration(n) * e.Rep
	}
	work := Step{Kind: Work, Length: length, Block: block, Round: round, Exercise: exercise, Name: e.Name,
		Side: Both, Reps: n, Set: len(b.p.Sets), ByHand: e.Finish == sessions.ByHand}
	set := Set{Block: block, Round: round, Exercise: exercise, First: len(b.p.Steps)}
	switch {
	case !e.OneSided():
		b.add(work)
	case e.Sides == sessions.AlternateReps:
		work.Side, work.Length, work.Reps = Alternate, 2*length, 2*n
		b.add(work)
	default:
		first, second := sidesOf(e.Sides, round)
		work.Side = first
		b.add(work)
		b.add(Step{Kind: Switch, Length: e.Switch, Block: block, Round: round, Exercise: exercise, Name: e.Name,
			Side: second, Set: len(b.p.Sets)})
		work.Side = second
		b.add(work)
	}
	set.Last = len(b.p.Steps) - 1
	for _, s := range b.p.Steps[set.First:] {
		set.Reps += s.Reps
		if s.Kind == Work {
			set.Work += s.Length
		}
	}
	set.Contacts = set.Reps * e.Contacts
	b.p.Sets = append(b.p.Sets, set)
	for _, t := range b.totals(block) {
		t.Sets++
		t.Reps += set.Reps
		t.Contacts += set.Contacts
	}
}

// sidesOf returns which side comes first and which second.
func sidesOf(order sessions.Sides, round int) (first, second Side) {
	if order == sessions.RightFirst || order == sessions.SwapEachRound && round%2 == 0 {
		return Right, Left
	}
	return Left, Right
}

// add appends a step, unless it has no length, and books its time.
func (b *builder) add(s Step) {
	if s.Length <= 0 {
		return
	}
	s.Start = b.at
	b.at += s.Length
	b.p.Steps = append(b.p.Steps, s)
	for _, t := range b.totals(s.Block) {
		switch s.Kind {
		case Work:
			t.Work += s.Length
		case Rest:
			t.Rest += s.Length
		default:
			t.Change += s.Length
		}
		t.Total = t.Work + t.Rest + t.Change
	}
}

// totals returns the books a step of the block counts in: the session's, and
// the block's if it has one.
func (b *builder) totals(block int) []*Totals {
	if block == 0 {
		return []*Totals{&b.p.Totals}
	}
	return []*Totals{&b.p.Totals, &b.p.Blocks[block-1].Totals}
}

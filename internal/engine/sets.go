package engine

import (
	"slices"
	"time"

	"coldfloor/internal/plan"
)

// setWork is what has been done of one set, an entry a side, in the order in
// which they were last worked. It outlives the set, so that a player who goes
// back for one side keeps the other.
type setWork []sideWork

// sideWork is one work step of a set, as it was done.
type sideWork struct {
	step          int
	done          bool // worked to its end
	taken, halted time.Duration
}

// endStep closes the books of the present step, and of its set where this was
// the set's last chance.
func (e *Engine) endStep(why Cause) {
	s := e.plan.Steps[e.step]
	taken := e.read() - e.began
	e.emit(Event{Kind: StepEnded, Cause: why, Length: e.planned(e.step), Taken: taken, Halted: e.halted})
	if s.Set < 0 {
		return
	}
	if s.Kind == plan.Work {
		e.sets[s.Set].book(sideWork{step: e.step, done: why == ByClock || why == ByFinish, taken: taken, halted: e.halted})
	}
	back := why == ByBack || why == ByRepeat
	if why == ByStop || !back && e.step == e.plan.Sets[s.Set].Last {
		e.endSet(s.Set, why)
	}
}

// book keeps s in place of what an earlier go at the same side gave, but for a
// side that was worked to its end: leaving it again takes nothing away.
func (w *setWork) book(s sideWork) {
	old := slices.IndexFunc(*w, func(old sideWork) bool { return old.step == s.step })
	switch {
	case old < 0:
	case (*w)[old].done && !s.done:
		return
	default:
		*w = slices.Delete(*w, old, old+1)
	}
	*w = append(*w, s)
}

// endSet says what was done of a set.
func (e *Engine) endSet(set int, why Cause) {
	r := &SetResult{Set: set, Outcome: Done, Planned: e.plannedOf(set), Easier: e.easier[e.concerns()]}
	ev := Event{Kind: SetEnded, Cause: why, Set: r}
	for _, w := range e.sets[set] {
		ev.Taken += w.taken
		ev.Halted += w.halted
		if w.done {
			s := e.plan.Steps[w.step]
			r.Sides = append(r.Sides, s.Side)
			r.Reps += s.Reps
		}
	}
	switch all := e.sidesOf(set); {
	case len(r.Sides) == 0 && why != ByStop:
		r.Outcome = Skipped
	case len(r.Sides) < all:
		r.Outcome = Partial
	}
	e.emit(ev)
}

// plannedOf returns how long the work of a set lasts in the variant that is on.
func (e *Engine) plannedOf(set int) (work time.Duration) {
	for i := e.plan.Sets[set].First; i <= e.plan.Sets[set].Last; i++ {
		if e.plan.Steps[i].Kind == plan.Work {
			work += e.planned(i)
		}
	}
	return work
}

// sidesOf returns how many work steps a set has.
func (e *Engine) sidesOf(set int) int {
	n := 0
	for i := e.plan.Sets[set].First; i <= e.plan.Sets[set].Last; i++ {
		if e.plan.Steps[i].Kind == plan.Work {
			n++
		}
	}
	return n
}

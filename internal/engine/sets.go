package engine

import (
	"slices"
	"time"

	"coldfloor/internal/plan"
)

// setWork is what has been done of one set. It outlives the set, so that a
// player who goes back for one side keeps the other.
type setWork struct {
	open  []sideWork   // not told yet, in the order worked
	whole map[int]bool // steps done in full since the set was last told as done
	told  bool         // an event has been sent for the set
}

// sideWork is one work step of a set, as it was done.
type sideWork struct {
	step          int
	whole         bool // done in full, or for so long that it counts as that
	ended         bool // by the player's key for that
	reps          int  // of all of them if whole; otherwise as far as the pace had got
	taken, halted time.Duration
}

// leastWork is how long timed work must last to count as something done.
const leastWork = time.Second

// something reports whether anything was done at all. A player who ends a side
// says that it was begun.
func (w *sideWork) something(s plan.Step) bool {
	return w.whole || w.ended || w.reps > 0 || s.Reps == 0 && w.taken >= leastWork
}

// endStep closes the books of the present step for the step at index to, and
// of its set if this was the set's last chance or the work is to be done again.
func (e *Engine) endStep(why Cause, to int) {
	s := e.plan.Steps[e.step]
	taken := e.read() - e.began
	e.emit(Event{Kind: StepEnded, Cause: why, Length: e.planned(e.step), Taken: taken, Halted: e.halted})
	if s.Set < 0 {
		return
	}
	w := &e.sets[s.Set]
	if s.Kind == plan.Work {
		w.open = append(w.open, e.sideDone(why, taken))
	}
	switch {
	case why == ByBack || why == ByRepeat:
		e.endGoBack(s.Set, why, to)
	case why == ByStop || e.step == e.plan.Sets[s.Set].Last:
		e.tellSet(s.Set, why, w.open)
		w.open = nil
	}
}

// sideDone returns what was done of the present step, which is work that ends
// after taken. A player who skips says that it was not done; one who ends it
// before half of its paced length has done as much of it as the pace had got
// to: a slap by mistake makes no set.
func (e *Engine) sideDone(why Cause, taken time.Duration) sideWork {
	s, paced := e.plan.Steps[e.step], e.planned(e.step)
	w := sideWork{step: e.step, taken: taken, halted: e.halted}
	switch why {
	case ByClock:
		w.whole = true
	case ByFinish:
		w.whole, w.ended = 2*taken >= paced, true
	case BySkip:
		return w
	default:
		w.whole = taken >= paced
	}
	if w.whole {
		w.reps = s.Reps
		return w
	}
	w.reps = int(time.Duration(s.Reps) * taken / paced)
	return w
}

// endGoBack tells what was done of a set and is to be done again, from the step
// at index to on. What comes before that step is kept.
func (e *Engine) endGoBack(set int, why Cause, to int) {
	w := &e.sets[set]
	var again []sideWork
	w.open = slices.DeleteFunc(w.open, func(s sideWork) bool {
		if s.step < to {
			return false
		}
		again = append(again, s)
		return true
	})
	if slices.ContainsFunc(again, e.something) {
		e.tellSet(set, why, again)
	}
}

// something reports whether anything was done of a side.
func (e *Engine) something(w sideWork) bool { return w.something(e.plan.Steps[w.step]) }

// tellSet tells what was done of a set in one go at it. A go at a set that was
// told of before, in which nothing was done, is passed over.
func (e *Engine) tellSet(set int, why Cause, work []sideWork) {
	w := &e.sets[set]
	r := &SetResult{Set: set, Outcome: Skipped, Planned: e.plannedOf(set), Easier: e.easier[e.exerciseOf(set)]}
	ev := Event{Kind: SetEnded, Cause: why, Set: r}
	for _, side := range work {
		ev.Taken += side.taken
		ev.Halted += side.halted
		if side.whole {
			if w.whole == nil {
				w.whole = map[int]bool{}
			}
			w.whole[side.step] = true
		}
		if e.something(side) {
			r.Outcome = Partial
			r.Sides = append(r.Sides, e.plan.Steps[side.step].Side)
			r.Reps += side.reps
		}
	}
	if r.Outcome == Skipped && w.told {
		return
	}
	if r.Outcome == Skipped && why == ByStop {
		if ev.Taken == 0 {
			return // stopped while it was counted in: it was not begun
		}
		r.Outcome = Partial // it was not the set that the player did not want
	}
	if len(r.Sides) > 0 && len(w.whole) == e.sidesOf(set) {
		r.Outcome, w.whole = Done, nil
	}
	w.told = true
	e.emit(ev)
}

// exerciseOf returns the exercise that a set is of.
func (e *Engine) exerciseOf(set int) Exercise {
	return Exercise{e.plan.Sets[set].Block, e.plan.Sets[set].Exercise}
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

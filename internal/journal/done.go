package journal

import (
	"iter"
	"slices"
)

// RoundsDone returns the completed rounds of each block: as the player said,
// or else those whose sets were all done. It is nil if neither is known.
func (r *Run) RoundsDone() []int {
	if r.Rating.Rounds != nil {
		return r.Rating.Rounds
	}
	return r.RoundsCounted()
}

// RoundsCounted returns the rounds of each block whose sets were all done,
// whatever the player said; nil if the run holds no sets. A set that was
// done again counts once.
func (r *Run) RoundsCounted() []int {
	switch {
	case r.Started == nil || r.OnPaper():
		return nil
	case r.lean != nil:
		return r.figures().rounds
	}
	type round struct {
		block, round, sets int
	}
	var rounds []round
	for p := range r.doneOnce() {
		i := slices.IndexFunc(rounds, func(x round) bool { return x.block == p.Block && x.round == p.Round })
		if i < 0 {
			i, rounds = len(rounds), append(rounds, round{p.Block, p.Round, 0})
		}
		rounds[i].sets++
	}
	done := make([]int, len(r.Started.Blocks))
	for _, x := range rounds {
		if x.block < 1 || x.block > len(done) {
			continue
		}
		if b := r.Started.Blocks[x.block-1]; b.Rounds > 0 && x.round <= b.Rounds && x.sets >= b.Sets/b.Rounds {
			done[x.block-1]++
		}
	}
	return done
}

// manySets is from how many sets on it is worth while to look them up.
const manySets = 64

// doneOnce yields the places at which a set was done, each once.
func (r *Run) doneOnce() iter.Seq[Place] {
	return func(yield func(Place) bool) {
		var counted map[Place]bool
		if len(r.Sets) >= manySets {
			counted = make(map[Place]bool, len(r.Sets))
		}
		for i := range r.Sets {
			s := &r.Sets[i]
			if s.Outcome != Done {
				continue
			}
			again := counted[s.Place]
			if counted == nil {
				again = r.doneBefore(i)
			} else {
				counted[s.Place] = true
			}
			if !again && !yield(s.Place) {
				return
			}
		}
	}
}

// doneBefore reports whether the place of a set was done by one before it.
func (r *Run) doneBefore(i int) bool {
	for j := range r.Sets[:i] {
		if r.Sets[j].Place == r.Sets[i].Place && r.Sets[j].Outcome == Done {
			return true
		}
	}
	return false
}

// SetsDone returns how many of the prescribed sets were done, one that was done
// again counted once. On paper it is not known.
func (r *Run) SetsDone() Count {
	switch {
	case r.OnPaper():
		return Count{}
	case r.lean != nil:
		return r.figures().sets
	}
	n := Count{Known: r.Missing == 0}
	for range r.doneOnce() {
		n.N++
	}
	return n
}

// Reps returns the reps of every set, both sides counted, those of sets done
// again among them. On paper they are not known.
func (r *Run) Reps() Count {
	switch {
	case r.OnPaper():
		return Count{}
	case r.lean != nil:
		return r.figures().reps
	}
	n := Count{Known: r.Missing == 0}
	for i := range r.Sets {
		n.N += r.Sets[i].Reps
	}
	return n
}

// Contacts returns the foot contacts of the reps of every set, those of sets
// done again among them. Of a run on paper they are those of the rounds done,
// as prescribed, and not known if nobody said how many rounds that was.
func (r *Run) Contacts() Count {
	switch {
	case r.OnPaper():
		return r.contactsOnPaper()
	case r.lean != nil:
		return r.figures().contacts
	}
	n := Count{Known: r.Missing == 0}
	for i := range r.Sets {
		if s := &r.Sets[i]; s.worked() {
			n = n.Add(s.Contacts)
		}
	}
	return n
}

func (r *Run) contactsOnPaper() Count {
	done := r.RoundsDone()
	if done == nil || len(r.Started.Blocks) == 0 {
		return Count{}
	}
	n := Count{Known: true}
	for i, b := range r.Started.Blocks {
		switch {
		case i >= len(done):
			n.Known = false
		case b.Rounds > 0 && done[i] > 0:
			n = n.Add(Count{N: b.Contacts.N * done[i] / b.Rounds, Known: b.Contacts.Known})
		}
	}
	return n
}

// worked reports whether work was begun in the set. One that was stopped while
// it was counted in was not.
func (s *Set) worked() bool { return s.Outcome == Done || s.TakenS > 0 || s.Reps > 0 }

// jumps reports whether the set had jumps in it, counted or not.
func (s *Set) jumps() bool { return s.worked() && (s.Contacts.N > 0 || !s.Contacts.Known) }

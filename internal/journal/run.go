package journal

import "time"

// State is how far a run came.
type State string

// The states.
const (
	Complete    State = "complete"    // to the plan's end
	Stopped     State = "stopped"     // ended early by the player
	Interrupted State = "interrupted" // ended early by a fault, and logged as it stood
	Unfinished  State = "unfinished"  // not ended: under way, or to be gone on with
)

// The outcomes of a set.
const (
	Done    = "done"    // every side was worked to its end
	Partial = "partial" // some of it was worked
	Skipped = "skipped" // nothing of it was
)

// Exercise names an exercise of a session, both counted from 1.
type Exercise struct{ Block, Exercise int }

// Paper is the Source of a run that was added by hand.
const Paper = "paper"

// Run is one run of a session as its lines give it.
type Run struct {
	ID      string
	Started *Started // what was prescribed; nil where that line is lost
	Start   time.Time
	State   State
	Elapsed time.Duration // wall time it took, pauses within, corrected where it was
	Clock   time.Duration // on the session's clock, at the last line of the session itself

	Sets   []Set  // as done last, one a place, in the order of the plan
	Rests  []Rest // in the order taken
	Pauses int
	Easier []Exercise // in their easier variant at the end

	Rating     Rating // the last word of every field
	Amendments []Line // every rating, correct, withdraw and restore line, in order
	Withdrawn  bool   // to count no more
	LastN      int    // number of its last line

	lastSet int // index into Sets of the one that ended last, or -1
}

// LastSet returns the set that ended last, and whether there is one.
func (r *Run) LastSet() (Set, bool) {
	if r.lastSet < 0 {
		return Set{}, false
	}
	return r.Sets[r.lastSet], true
}

// Title returns the session's title, or a word in its place where it is lost.
func (r *Run) Title() string {
	if r.Started == nil {
		return "(start lost)"
	}
	return r.Started.Title
}

// Blocks returns what was prescribed, block by block.
func (r *Run) Blocks() []PlannedBlock {
	if r.Started == nil {
		return nil
	}
	return r.Started.Blocks
}

// Rehearsal reports whether the run was sped up, and so trained nobody.
func (r *Run) Rehearsal() bool { return r.Started != nil && r.Started.Speed > 0 }

// OnPaper reports whether the run was added by hand, and so has no sets.
func (r *Run) OnPaper() bool { return r.Started != nil && r.Started.Source == Paper }

// RoundsDone returns the completed rounds of each block: as the player said,
// or else those whose sets were all done. It is nil where neither is known.
func (r *Run) RoundsDone() []int {
	if r.Rating.Rounds != nil {
		return r.Rating.Rounds
	}
	return r.RoundsCounted()
}

// RoundsCounted returns the rounds of each block whose sets were all done,
// whatever the player said; nil where the run tells of no sets.
func (r *Run) RoundsCounted() []int {
	if r.Started == nil || r.OnPaper() {
		return nil
	}
	type round struct{ block, round int }
	sets := map[round]int{}
	for _, s := range r.Sets {
		if s.Outcome == Done {
			sets[round{s.Block, s.Round}]++
		}
	}
	done := make([]int, len(r.Started.Blocks))
	for at, n := range sets {
		if at.block < 1 || at.block > len(done) {
			continue
		}
		if b := r.Started.Blocks[at.block-1]; b.Rounds > 0 && at.round <= b.Rounds && n >= b.Sets/b.Rounds {
			done[at.block-1]++
		}
	}
	return done
}

// Contacts returns the foot contacts of the reps done. Of a run on paper they
// are those of the rounds done, as prescribed.
func (r *Run) Contacts() int {
	n := 0
	for _, s := range r.Sets {
		n += s.Contacts
	}
	if !r.OnPaper() {
		return n
	}
	for i, done := range r.RoundsDone() {
		if i < len(r.Started.Blocks) && r.Started.Blocks[i].Rounds > 0 {
			n += r.Started.Blocks[i].Contacts * done / r.Started.Blocks[i].Rounds
		}
	}
	return n
}

// Load returns the session's load, its RPE times its minutes (Foster, Med Sci
// Sports Exerc 1998;30:1164–1168), in arbitrary units, and whether it was rated.
func (r *Run) Load() (float64, bool) {
	if r.Rating.RPE == nil {
		return 0, false
	}
	return *r.Rating.RPE * r.Elapsed.Minutes(), true
}

// Empty reports whether nothing was said.
func (r *Rating) Empty() bool {
	return r.Rounds == nil && r.RPE == nil && r.Pain == nil && r.Where == nil && r.Note == nil
}

// merge lays what v says over r.
func (r *Rating) merge(v *Rating) {
	if v.Rounds != nil {
		r.Rounds = v.Rounds
	}
	if v.RPE != nil {
		r.RPE = v.RPE
	}
	if v.Pain != nil {
		r.Pain = v.Pain
	}
	if v.Where != nil {
		r.Where = v.Where
	}
	if v.Note != nil {
		r.Note = v.Note
	}
}

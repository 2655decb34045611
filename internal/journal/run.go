package journal

import (
	"time"

	"coldfloor/internal/trainingload"
)

// State is how far a run came.
type State string

// The states.
const (
	Complete    State = "complete"    // to the plan's end
	Stopped     State = "stopped"     // ended early by the player
	Interrupted State = "interrupted" // ended early by a fault, and logged as it stood
	Unfinished  State = "unfinished"  // not ended: under way, or to be resumed
)

// The outcomes of a set.
const (
	Done    = "done"    // every side was done in full
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
	Started *Started // what was prescribed; nil if that line is lost
	Start   time.Time
	State   State
	Elapsed time.Duration // wall time it took, pauses within, corrected if it was
	Clock   time.Duration // on the session's clock, at the last line of the session itself

	Sets     []Set  // every one that ended, in the order done: a place that was done again stands there again
	Rests    []Rest // in the order taken
	Measures []Measure
	Pauses   int
	Easier   []Exercise // in their easier variant at the end

	Rating     Rating      // the last word on rounds and effort, and whether there was pain
	Said       []Statement // of pain, and notes, in the order said
	Amendments []Line      // every rating, correct, withdraw and restore line, in order
	Withdrawn  bool        // to count no more
	Removed    time.Time   // when it was withdrawn last; zero if never
	LastN      int         // number of its last line

	Missing int // lines that its numbers say were there, and are not
	Differ  int // lines that stand twice and differ; the first counts

	length bool  // Elapsed was corrected
	lean   *lean // stands for the sets, rests and amendments that were left out
}

// Lean reports whether the run comes without its sets, rests, results and
// amendments, and with the figures of them alone; Overview.Full reads them.
func (r *Run) Lean() bool { return r.lean != nil }

// LastSet returns the set that ended last, and whether there is one.
func (r *Run) LastSet() (Set, bool) {
	if len(r.Sets) == 0 {
		return Set{}, false
	}
	return r.Sets[len(r.Sets)-1], true
}

// Title returns the session's title, or a word in its place if it is lost.
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

// Load returns the session's load, its RPE times its minutes (Foster, Med Sci
// Sports Exerc 1998;30:1164–1168), in arbitrary units, and whether it was rated.
func (r *Run) Load() (float64, bool) {
	if r.Rating.RPE == nil {
		return 0, false
	}
	return trainingload.Session(*r.Rating.RPE, r.Elapsed), true
}

// End returns when the last set or rest of the run ended, or, if none says
// when, the start and the length together.
func (r *Run) End() time.Time {
	if r.lean != nil {
		return r.lean.end
	}
	var end time.Time
	for i := range r.Sets {
		end = later(end, r.Sets[i].At)
	}
	for i := range r.Rests {
		end = later(end, r.Rests[i].At)
	}
	if end.IsZero() || r.length {
		return r.Start.Add(r.Elapsed)
	}
	return end
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

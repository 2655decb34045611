package journal

import "time"

// figures is what a lean run keeps of what was left out of it.
type figures struct {
	rounds               []int // as RoundsCounted
	sets, reps, contacts Count // as SetsDone, Reps and Contacts
	ended                int   // sets that ended
	worked               bool  // one of them was not skipped
	jumped               bool
	jumpedAt, end        time.Time
	days                 []Day
}

// slim leaves out of r what grows with its sets, and keeps the figures of it.
func (r *Run) slim() {
	f := &figures{rounds: r.RoundsCounted(), sets: r.SetsDone(), reps: r.Reps(), contacts: r.Contacts(),
		ended: len(r.Sets), worked: r.anyWorked(), end: r.End(), days: r.Days()}
	f.jumpedAt, f.jumped = r.Jumped()
	r.lean = f
	r.Sets, r.Rests, r.Measures, r.Amendments = nil, nil, nil, nil
}

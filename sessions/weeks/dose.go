package weeks

import (
	"time"

	"coldfloor/sessions"
)

// amount is the dose of an exercise, wherever it is kept: a number of reps, or
// a time in nanoseconds.
type amount struct {
	reps *int
	time *time.Duration
	what What
	key  string // of the session file
}

// dose returns the one amount that a valid exercise has.
func dose(e *sessions.Exercise) amount {
	switch {
	case e.Reps > 0:
		return amount{reps: &e.Reps, what: Reps, key: "reps"}
	case e.RepsPerSide > 0:
		return amount{reps: &e.RepsPerSide, what: Reps, key: "reps_per_side"}
	case e.Time > 0:
		return amount{time: &e.Time, what: Time, key: "time"}
	}
	return amount{time: &e.TimePerSide, what: Time, key: "time_per_side"}
}

// get returns the amount.
func (a amount) get() int64 {
	if a.reps != nil {
		return int64(*a.reps)
	}
	return int64(*a.time)
}

// put changes it.
func (a amount) put(v int64) {
	if a.reps != nil {
		*a.reps = int(v)
		return
	}
	*a.time = time.Duration(v)
}

// unit is what it is rounded to: a rep or a second.
func (a amount) unit() int64 {
	if a.reps != nil {
		return 1
	}
	return int64(time.Second)
}

// lighten keeps a share of the main blocks of s: whole rounds first, and of
// the doses of each round what the rounds that stay leave to be taken away. It
// reports whether anything changed.
func lighten(s *sessions.Session, keep Percent) (changed bool) {
	for i := range s.Blocks {
		b := &s.Blocks[i]
		if b.Part != sessions.Main {
			continue
		}
		kept := int64(b.Rounds) * int64(keep) // of all rounds, in thousandths of a percent
		rounds := max(1, (kept+hundred-1)/hundred)
		for j := range b.Exercises {
			a := dose(&b.Exercises[j])
			was := a.get()
			a.put(min(was, max(a.unit(), scaled(was, kept, hundred*rounds, a.unit()))))
			changed = changed || a.get() != was
		}
		changed = changed || int(rounds) != b.Rounds
		b.Rounds = int(rounds)
	}
	return changed
}

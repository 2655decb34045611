package journal

import (
	"iter"
	"slices"
	"time"

	"coldfloor/internal/units"
)

// Fate says whether a run counts, and if not why.
type Fate string

// The fates. What counts is decided here, for the log, the review, the export,
// the check and the list of sessions alike.
const (
	Counted   Fate = "counted"
	Deleted   Fate = "deleted"      // the player took it back
	Rehearsed Fate = "rehearsal"    // sped up: it trained nobody
	Empty     Fate = "nothing done" // begun, and nothing was done or said in it
)

// Fate returns whether the run counts, and if not why.
func (r *Run) Fate() Fate {
	switch {
	case r.Withdrawn:
		return Deleted
	case r.Rehearsal():
		return Rehearsed
	case r.OnPaper(), r.State == Complete && r.setsEnded() == 0, r.Rating.RPE != nil, r.Rating.Pain != nil, len(r.Said) > 0:
		return Counted
	case r.anyWorked():
		return Counted
	}
	return Empty
}

// setsEnded returns the number of sets that ended, whatever was done of them.
func (r *Run) setsEnded() int {
	if r.lean != nil {
		return r.lean.ended
	}
	return len(r.Sets)
}

// anyWorked reports whether a set was begun and not skipped.
func (r *Run) anyWorked() bool {
	if r.lean != nil {
		return r.lean.worked
	}
	return slices.ContainsFunc(r.Sets, func(s Set) bool { return s.Outcome != Skipped && s.worked() })
}

// Counts reports whether the run counts as a session that was done.
func (r *Run) Counts() bool { return r.Fate() == Counted }

// Counting yields those of runs that count, in their order.
func Counting(runs []*Run) iter.Seq[*Run] {
	return func(yield func(*Run) bool) {
		for _, r := range runs {
			if r.Counts() && !yield(r) {
				return
			}
		}
	}
}

// Jumps is when a run had jumps in it last.
type Jumps struct {
	Run   *Run
	At    time.Time // of the last set with jumps, at the latest now
	Ahead bool      // the journal dates it later than now: a clock was off
}

// Jumped returns when the run had its last jumps, and false if it had none. A
// run on paper that had jumps prescribed, and of which nobody said how much was
// done, is held to have had some.
func (r *Run) Jumped() (time.Time, bool) {
	if r.OnPaper() {
		n := r.Contacts()
		prescribed := slices.ContainsFunc(r.Blocks(), func(b PlannedBlock) bool { return b.Contacts.N > 0 || !b.Contacts.Known })
		if n.N > 0 || !n.Known && prescribed {
			return r.Start.Add(r.Elapsed), true
		}
		return time.Time{}, false
	}
	if r.lean != nil {
		return r.lean.jumpedAt, r.lean.jumped
	}
	var at time.Time
	jumped := false
	for i := range r.Sets {
		if r.Sets[i].jumps() {
			jumped, at = true, later(at, r.Sets[i].At)
		}
	}
	switch {
	case !jumped:
		return time.Time{}, false
	case at.IsZero() || r.length:
		at = r.Start.Add(r.Elapsed)
	}
	return at, true
}

// JumpsOf returns when each of runs that counts had its last jumps, the
// earliest first. One that the journal dates ahead of now was done before now
// all the same: it counts as if it had just ended.
func JumpsOf(runs []*Run, now time.Time) []Jumps {
	var all []Jumps
	for r := range Counting(runs) {
		if at, jumped := r.Jumped(); jumped {
			j := Jumps{Run: r, At: at, Ahead: r.Start.After(now)}
			if at.After(now) {
				j.At = now
			}
			all = append(all, j)
		}
	}
	slices.SortStableFunc(all, func(a, b Jumps) int { return a.At.Compare(b.At) })
	return all
}

// Day is what was done of a run on one date.
type Day struct {
	Date     time.Time     // midnight UTC, standing for the date where the player was
	Worked   time.Duration // of its sets
	Part     float64       // of the whole run's Worked; all Parts of a run add up to 1
	Contacts Count
}

// Days returns the dates on which the run was worked at, the earliest first:
// several if it was resumed later, or if midnight passed meanwhile. A run
// without sets is all of the date that it began.
func (r *Run) Days() []Day {
	if r.lean != nil {
		return r.figures().days
	}
	byDate := map[time.Time]*Day{}
	total := time.Duration(0)
	for i := range r.Sets {
		s := &r.Sets[i]
		if !s.worked() || s.At.IsZero() {
			continue
		}
		date := dateOf(s.At)
		d := byDate[date]
		if d == nil {
			d = &Day{Date: date, Contacts: Count{Known: r.Missing == 0}}
			byDate[date] = d
		}
		d.Worked += units.Seconds(s.TakenS)
		total += units.Seconds(s.TakenS)
		d.Contacts = d.Contacts.Add(s.Contacts)
	}
	if total == 0 {
		return []Day{{Date: dateOf(r.Start), Part: 1, Contacts: r.Contacts()}}
	}
	var days []Day
	for _, d := range byDate {
		d.Part = float64(d.Worked) / float64(total)
		days = append(days, *d)
	}
	slices.SortFunc(days, func(a, b Day) int { return a.Date.Compare(b.Date) })
	return days
}

// dateOf returns the date of t where it was taken, as midnight UTC.
func dateOf(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC)
}

// Package season holds a plan of weeks against what a player did: which of its
// days were done, on time or late, and which were missed.
//
// A run that was begun from the plan says for which day: the plan's title and
// first day, the date, the place in the day and the session. Each other run of
// a session of that name counts for the planned day of its own date, or else
// for the nearest one within Reach days that nothing fills; of two equally near
// the earlier. What is left is missed once Reach days have passed.
package season

import (
	"coldfloor/internal/journal"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// Reach is how many calendar days before or after its date a session can be
// done for it.
const Reach = 3

// State is how a planned day stands.
type State string

// The states.
const (
	Done    State = "done"
	Missed  State = "missed"   // not done, and more than Reach days ago
	Skipped State = "skipped"  // the player began it and left all of it undone
	LeftOut State = "left out" // on a day without training
	Due     State = "due"      // its date has come, and it can still be done
	Ahead   State = "ahead"    // its date is to come
)

// Day is one session of the plan with what was done of it.
type Day struct {
	weeks.Planned
	State State
	Runs  []*journal.Run // done for it, the earliest first; none unless Done or Skipped
}

// Late returns how many calendar days after its date a day was done, below 0
// if before it, and false unless it was done.
func (d *Day) Late() (days int, ok bool) {
	if d.State != Done {
		return 0, false
	}
	return int(began(d.Runs[0]) - d.Date), true
}

// Week is a week of the plan with its days.
type Week struct {
	weeks.Week
	Sessions []Day // every session of it, those left out last
}

// Season is a plan and what a player did of it, as of a day.
type Season struct {
	Plan   *weeks.Plan
	Today  units.Date
	Weeks  []Week
	Others []*journal.Run // runs that count and are for no day of the plan

	doses map[doseOf]Dose // those asked for so far
}

// Count is how many days of the plan stand how.
type Count struct {
	Planned                    int // all but those left out
	Done, Late                 int // Late of Done: after their date
	Missed, Skipped, Due, Come int // Come: of Planned, those whose date is today or before, and those done before theirs
	LeftOut                    int
}

// add counts a day.
func (c *Count) add(d *Day, today units.Date) {
	if d.State == LeftOut {
		c.LeftOut++
		return
	}
	c.Planned++
	if d.Date <= today || d.State == Done {
		c.Come++
	}
	switch d.State {
	case Done:
		c.Done++
		if late, _ := d.Late(); late > 0 {
			c.Late++
		}
	case Missed:
		c.Missed++
	case Skipped:
		c.Skipped++
	case Due:
		c.Due++
	}
}

// Count returns how the days of a week stand, as of today.
func (w *Week) Count(today units.Date) Count {
	var c Count
	for i := range w.Sessions {
		c.add(&w.Sessions[i], today)
	}
	return c
}

// Between returns how the days from one date to another stand, both counted.
func (s *Season) Between(from, to units.Date) Count {
	var c Count
	for d := range s.days() {
		if from <= d.Date && d.Date <= to {
			c.add(d, s.Today)
		}
	}
	return c
}

// On returns the days of a date that are not left out, in order.
func (s *Season) On(date units.Date) []*Day {
	return s.find(func(d *Day) bool { return d.Date == date && d.State != LeftOut })
}

// Open returns the days before today that are not done and can be yet, the
// earliest first.
func (s *Season) Open() []*Day {
	return s.find(func(d *Day) bool { return d.State == Due && d.Date < s.Today })
}

// Missed returns the days that were missed, the earliest first.
func (s *Season) Missed() []*Day {
	return s.find(func(d *Day) bool { return d.State == Missed })
}

// Next returns the first day after today that is not done, or nil.
func (s *Season) Next() *Day {
	for d := range s.days() {
		if d.State == Ahead {
			return d
		}
	}
	return nil
}

// find returns the days for which ok holds, in order.
func (s *Season) find(ok func(*Day) bool) []*Day {
	var found []*Day
	for d := range s.days() {
		if ok(d) {
			found = append(found, d)
		}
	}
	return found
}

// days yields every day in order, those left out after the others of their
// week.
func (s *Season) days() func(func(*Day) bool) {
	return func(yield func(*Day) bool) {
		for w := range s.Weeks {
			for i := range s.Weeks[w].Sessions {
				if !yield(&s.Weeks[w].Sessions[i]) {
					return
				}
			}
		}
	}
}

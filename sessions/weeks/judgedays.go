package weeks

import (
	"fmt"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// judgeMoves notes the moves that cannot be.
func (r *reader) judgeMoves() {
	holds := map[units.Date]bool{}
	for _, d := range r.p.pattern() {
		holds[d.First] = true
	}
	within := func(d units.Date) bool { return d >= r.p.Starts && d <= r.p.End() }
	for i, m := range r.p.Moves {
		from, to := r.moves[i].Key, r.moves[i].Value
		span := fmt.Sprintf("the plan runs from %s to %s", r.p.Starts, r.p.End())
		switch {
		case !within(m.From):
			from.Problem(fmt.Sprintf("%s is outside the plan", m.From), span)
		case !within(m.To):
			to.Problem(fmt.Sprintf("%s is outside the plan", m.To), span)
		case m.From == m.To:
			to.Problem(fmt.Sprintf("%s is moved to itself", m.From), "write another day, or take the line out")
		case !holds[m.From]:
			from.Problem(fmt.Sprintf("there is nothing to move on %s", m.From.Short()), r.near(m.From, holds))
		case r.p.IsAway(m.To):
			to.Problem(fmt.Sprintf("%s is among the days away", m.To.Short()), "move it to a day with training, or leave it out")
		}
	}
}

// near names the days of the pattern around one that has nothing.
func (r *reader) near(d units.Date, holds map[units.Date]bool) string {
	for n := units.Date(1); n < 7; n++ {
		for _, day := range []units.Date{d - n, d + n} {
			if holds[day] {
				return fmt.Sprintf("the pattern has a session on %s", day.Short())
			}
		}
	}
	return ""
}

// judgeDays notes the days with more sessions than a day may have, each at the
// move that leads there, or else at the last session of its weekday.
func (r *reader) judgeDays() {
	to := map[units.Date]Move{}
	for _, m := range r.p.Moves {
		to[m.From] = m
	}
	type crowd struct {
		n     int
		cause yamlread.Pos
		moved bool
	}
	days := map[units.Date]*crowd{}
	for _, d := range r.p.pattern() {
		m, moved := to[d.First]
		if moved {
			d.Date = m.To
		}
		c := days[d.Date]
		if c == nil {
			c = &crowd{}
			days[d.Date] = c
		}
		c.n++
		if !c.moved {
			c.cause, c.moved = d.Slot.Pos, moved
		}
		if moved {
			c.cause = m.Pos
		}
	}
	said := map[yamlread.Pos]bool{}
	for d := r.p.Starts; d <= r.p.End(); d++ {
		if c := days[d]; c != nil && c.n > MaxADay && !said[c.cause] {
			said[c.cause] = true
			r.m.ProblemAt(c.cause, fmt.Sprintf("%s has %d sessions, at most %d", d.Short(), c.n, MaxADay), "move one to another day, or leave one out")
		}
	}
}

package weeks

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Change is one thing in which the session of a day differs from its file.
type Change struct {
	What     What
	Block    string
	Exercise string // empty if it is the block's
	Was, Is  string // as typed in a session file: 8, 10s
	Delta    int64  // a number, or nanoseconds
}

// Changes returns in what the session of a day differs from its file, in the
// order of the session.
func (p *Plan) Changes(d Planned) []Change {
	return Differences(p.bases[d.Slot.Session], p.Session(d))
}

// Differences returns in what one session that a plan made differs from
// another of the same file.
func Differences(base, s *sessions.Session) []Change {
	var all []Change
	note := func(what What, block, exercise string, was, is int64) {
		if was == is {
			return
		}
		g := Grow{What: what}
		all = append(all, Change{what, block, exercise, g.write(was), g.write(is), is - was})
	}
	for i := range s.Blocks {
		was, is := &base.Blocks[i], &s.Blocks[i]
		note(Rounds, is.Title, "", int64(was.Rounds), int64(is.Rounds))
		note(Rest, is.Title, "", int64(was.Rest), int64(is.Rest))
		for j := range is.Exercises {
			before, now := dose(&was.Exercises[j]), dose(&is.Exercises[j])
			note(now.what, is.Title, is.Exercises[j].Name, before.get(), now.get())
		}
	}
	return all
}

// Harder reports whether the change makes the session harder: less rest, or
// more of anything else.
func (c Change) Harder() bool { return (c.Delta > 0) != (c.What == Rest) }

// String writes the change shortly: "Up, Pogo hops: 9 reps (8)".
func (c Change) String() string {
	where := c.Block
	if c.Exercise != "" {
		where += ", " + c.Exercise
	}
	switch c.What {
	case Reps, Rounds:
		what := string(c.What)
		if c.Is == "1" {
			what = strings.TrimSuffix(what, "s")
		}
		return fmt.Sprintf("%s: %s %s (%s)", where, c.Is, what, c.Was)
	case Rest:
		return fmt.Sprintf("%s: rest %s (%s)", where, spoken(c.Is), spoken(c.Was))
	}
	return fmt.Sprintf("%s: %s (%s)", where, spoken(c.Is), spoken(c.Was))
}

// spoken writes a typed duration as a sentence has it.
func spoken(text string) string {
	d, err := units.ParseDuration(text)
	if err != nil {
		return text
	}
	return units.Sentence(d.Round(time.Millisecond))
}

// Raise is one value of one session that a week makes harder.
type Raise struct {
	Session string
	What    What
}

// Raised returns what a week makes harder than the week before, each session
// and value once: of the sessions that the pattern has in both weeks, before
// anything is lighter.
func (p *Plan) Raised(week int) []Raise {
	var all []Raise
	for _, s := range p.Slots {
		before, now := p.fullOf(s.Session, week-1), p.fullOf(s.Session, week)
		if before == nil || now == nil {
			continue
		}
		for _, c := range Differences(before, now) {
			if r := (Raise{s.Session, c.What}); c.Harder() && !slices.Contains(all, r) {
				all = append(all, r)
			}
		}
	}
	return all
}

// fullOf returns the session of a week before anything is lighter, or nil if
// the pattern does not have it then.
func (p *Plan) fullOf(name string, week int) *sessions.Session {
	if s := p.full[sessionWeek{name, week}]; s != nil {
		return s
	}
	return p.made[sessionWeek{name, week}]
}

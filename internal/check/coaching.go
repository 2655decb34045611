package check

import (
	"slices"
	"strings"

	"coldfloor/internal/cautions"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// cues notes exercises that a player alone gets no cue for.
func cues(c *checker) {
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if len(e.Cues) == 0 {
			c.add(Note, e.Marks.At("name"), nil, "%s has no cue; a player alone has nobody to correct them", quote(e.Name))
		}
	})
}

// easier notes exercises of the main part that have no easier variant.
func easier(c *checker) {
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if !e.Easier.Given() && b.Part == sessions.Main {
			c.add(Note, e.Marks.At("name"), nil, "%s has no easier variant for a day on which it is too much", quote(e.Name))
		}
	})
}

// unknownEasier notes, once, the easier variants of jumps that do not say how
// often their feet land.
func unknownEasier(c *checker) {
	var names []string
	var first yamlread.Pos
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if e.Contacts == 0 || !e.Easier.Bare {
			return
		}
		if len(names) == 0 {
			first = e.Marks.At("easier")
		}
		if name := quote(e.Name); !slices.Contains(names, name) {
			names = append(names, name)
		}
	})
	if len(names) > 0 {
		c.add(Note, first, nil, "the contacts of the easier variant are not written and count as the exercise's: %s; write easier: {name: …, contacts: …}", strings.Join(names, ", "))
	}
}

// levels in rising order.
var levels = []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced}

// above reports whether a is a higher level than b, where both are given.
func above(a, b sessions.Level) bool {
	return a != "" && b != "" && slices.Index(levels, a) > slices.Index(levels, b)
}

// jumpLevels tell from which level on a jump is for a player, by a part of its
// name; the first that fits counts. The handbook orders jumps in place, standing jumps,
// multiple hops, bounds, box drills and depth jumps by rising intensity (NSCA
// Essentials, from memory); where a level begins is common practice, no
// source.
var jumpLevels = []struct {
	part  string
	level sessions.Level
}{
	{"depth jump", sessions.Advanced}, {"drop jump", sessions.Advanced},
	{"single-leg bound", sessions.Advanced}, {"one-leg bound", sessions.Advanced}, {"one-legged bound", sessions.Advanced},
	{"tuck jump", sessions.Intermediate}, {"pike jump", sessions.Intermediate}, {"hurdle", sessions.Intermediate},
	{"bound", sessions.Intermediate}, {"single-leg hop", sessions.Intermediate}, {"one-leg hop", sessions.Intermediate},
	{"one-legged hop", sessions.Intermediate}, {"hop on one leg", sessions.Intermediate}, {"single-leg jump", sessions.Intermediate},
}

// levelRule notes jumps and sessions that are above the level they are for.
func levelRule(c *checker) {
	player := c.o.Player.Level
	if above(c.s.Level, player) {
		c.add(Warning, c.s.Marks.At("level"), nil, "the session is for level %s, the settings say %s", c.s.Level, player)
	}
	level := c.level()
	if above(level, player) {
		level = player
	}
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if !traitsOf(b, e).has(jump) {
			return
		}
		name := strings.ToLower(e.Name)
		for _, j := range jumpLevels {
			if !strings.Contains(name, j.part) {
				continue
			}
			if above(j.level, level) {
				c.add(Warning, e.Marks.At("name"), nil, "%s is a jump for level %s, the session is for %s (NSCA Essentials' order of intensity, from memory)", quote(e.Name), j.level, level)
			}
			break
		}
		if strings.Contains(name, "depth jump") || strings.Contains(name, "drop jump") {
			c.depthJump(e)
		}
	})
}

// heavy is the mass from which on the handbook bounds the height of depth
// jumps, kg.
const heavy = 100

// puberty is the age up to which the rules take a player for a child. Our own,
// no source.
const puberty = 13

// depthJump holds a depth jump against the player's age and mass.
func (c *checker) depthJump(e *sessions.Exercise) {
	s := &c.o.Player
	if age, ok := s.Age(c.o.Now); ok && age <= puberty {
		c.add(Warning, e.Marks.At("name"), figures{"age": age}, "%s is a depth jump for a player of %d; none before puberty (NSCA Essentials, from memory)", quote(e.Name), age)
	}
	if s.Mass > heavy {
		c.add(Note, e.Marks.At("name"), figures{"mass_kg": s.Mass}, "%s is a depth jump for a player of %g kg; from no more than 46 cm above %d kg (NSCA Essentials, from memory)", quote(e.Name), s.Mass, heavy)
	}
}

// supervision reminds of who must be there where the player may be under 18.
func supervision(c *checker) {
	if !c.o.Player.Minor(c.o.Now) {
		return
	}
	years, _ := c.o.Player.Age(c.o.Now)
	c.add(Note, c.s.Marks.At("title"), figures{"age": years},
		"the player was born in %d. %s Raise volume before intensity (Faigenbaum et al. 2009, Lloyd et al. 2014)",
		c.o.Player.BirthYear, cautions.Under18)
}

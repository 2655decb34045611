package check

import (
	"slices"

	"coldfloor/internal/jumps"
	"coldfloor/internal/text"
	"coldfloor/sessions"
)

// levels in rising order.
var levels = []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced}

// above reports whether a is a higher level than b, if both are given.
func above(a, b sessions.Level) bool {
	return a != "" && b != "" && slices.Index(levels, a) > slices.Index(levels, b)
}

// levelRule warns of jumps and sessions that are above the level they are for,
// and says whose level each is.
func levelRule(c *checker) {
	player := c.o.Player.Level
	if above(c.s.Level, player) {
		c.say(Warning, c.s.Marks.At("level"), nil, c.w.SessionLevel(c.levelName(c.s.Level), c.levelName(player)))
	}
	level, players := c.s.Level, false
	if level == "" || above(level, player) {
		level, players = player, true
	}
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if !jumps.Is(e) {
			return
		}
		if from := jumps.From(e.Name); above(from, level) {
			c.say(Warning, e.Marks.At("name"), nil, c.w.JumpLevel(c.name(e.Name), c.levelName(from), c.levelName(level), players))
		}
		if jumps.Depth(e.Name) {
			c.depthJump(e)
		}
	})
}

// levelName names a level within a sentence.
func (c *checker) levelName(l sessions.Level) string { return c.o.Language.Choose.Levels[string(l)] }

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
		c.say(Warning, e.Marks.At("name"), figures{"age": age}, c.w.DepthJump(c.name(e.Name), age))
	}
	if s.Mass > heavy {
		c.add(Note, e.Marks.At("name"), figures{"mass_kg": s.Mass}, "%s is a depth jump for a player of %g kg; above %d kg from no more than 46 cm (NSCA Essentials, from memory)", quote(e.Name), s.Mass, heavy)
	}
}

// supervision reminds of who must be there if the player may be under 18.
func supervision(c *checker) {
	if !c.o.Player.Minor(c.o.Now) {
		return
	}
	years, _ := c.o.Player.Age(c.o.Now)
	c.add(Note, c.s.Marks.At("title"), figures{"age": years},
		"the player was born in %d. %s Raise volume before intensity (Faigenbaum et al. 2009, Lloyd et al. 2014)",
		c.o.Player.BirthYear, text.English.Care.Under18)
}

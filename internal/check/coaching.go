package check

import "coldfloor/sessions"

// cues notes exercises that a player alone gets no cue for.
func cues(c *checker) {
	var l listed
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if len(e.Cues) == 0 {
			l.add(e, "name")
		}
	})
	c.tell(Note, l, "no cue for %s; a player alone has nobody to correct them")
}

// fastRising notes tempos whose rising is as fast as possible, for how long that
// takes no file says.
func fastRising(c *checker) {
	var l listed
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		switch {
		case e.Tempo.Fast:
			l.add(e, "tempo")
		case e.Easier.Tempo.Fast:
			l.add(e, "easier")
		case e.Harder.Tempo.Fast:
			l.add(e, "harder")
		}
	})
	c.tell(Note, l, "X in the tempo of %s is as fast as possible, and counted as "+span(sessions.FastRising)+" in every length")
}

// easier notes exercises of the main part that have no easier variant.
func easier(c *checker) {
	var l listed
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if !e.Easier.Given() && b.Part == sessions.Main {
			l.add(e, "name")
		}
	})
	c.tell(Note, l, "no easier variant of %s for a day on which it is too much")
}

// unknownEasier notes the easier variants of jumps that do not say how often
// their feet land.
func unknownEasier(c *checker) {
	var l listed
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if e.Contacts > 0 && e.Easier.Bare {
			l.add(e, "easier")
		}
	})
	c.tell(Note, l, "the contacts of the easier variant are not given, and count as the exercise's: %s; write easier: {name: …, contacts: …}")
}

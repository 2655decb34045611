package check

import (
	"strings"

	"coldfloor/internal/jumps"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// floor holds the floor that each exercise needs against the room's.
func floor(c *checker) {
	room := c.o.Room
	if room.Along == 0 {
		return
	}
	var unsaid []string
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		need, at := e.Floor, e.Marks.At("floor")
		f := figures{"along_m": need.Along.Metres(), "across_m": need.Across.Metres(),
			"room_along_m": room.Along.Metres(), "room_across_m": room.Across.Metres()}
		switch {
		case need == sessions.Floor{}:
			unsaid = append(unsaid, e.Name)
		case need.Along <= room.Along && need.Across <= room.Across:
		case need.Along <= room.Across && need.Across <= room.Along:
			c.add(Note, at, f, "%s needs a floor of %s and fits the %s of the room only turned by a quarter",
				quote(e.Name), area(need.Along, need.Across), area(room.Along, room.Across))
		default:
			c.say(Error, at, f, c.w.Floor(c.name(e.Name), area(need.Along, need.Across), area(room.Along, room.Across)))
		}
	})
	if len(unsaid) > 0 {
		c.add(Note, c.s.Marks.At("blocks"), nil, "how much floor %s needs is not said; write it as floor: 2m x 1m", list(unsaid, maxNames))
	}
}

// travel tells how many reps of a jump that travels fit the length of the
// floor before a turn.
func travel(c *checker) {
	along := max(c.o.Room.Along, c.o.Room.Across) // the player faces the long way
	if along == 0 {
		return
	}
	var unsaid []string
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		one := c.travelOf(e)
		if !one.Known() {
			if mayTravel(e) {
				unsaid = append(unsaid, e.Name)
			}
			return
		}
		c.turns(e, one, along)
	})
	if len(unsaid) > 0 {
		c.add(Note, c.s.Marks.At("blocks"), nil, "how far a rep of %s travels is not said; write it as travel: 1.5m", list(unsaid, maxNames))
	}
}

// turns reports on one exercise that travels.
func (c *checker) turns(e *sessions.Exercise, one settings.Figure, along units.Length) {
	fit := int(along / one.Length)
	reps := max(e.Reps, e.RepsPerSide)
	if e.Sides == sessions.AlternateReps {
		reps = 2 * e.RepsPerSide
	}
	f := figures{"travel_m": one.Length.Metres(), "room_along_m": along.Metres(), "fit": fit, "reps": reps, "estimated": one.Estimated}
	key, how := "travel", ""
	if one.Estimated {
		key, how = "name", c.w.Estimated(one.Source)
	}
	at := e.Marks.At(key)
	switch {
	case fit == 0 && one.Estimated:
		c.say(Warning, at, f, c.w.Travel(c.name(e.Name), one.Length.Text(), along.Text(), how))
	case fit == 0:
		c.say(Error, at, f, c.w.Travel(c.name(e.Name), one.Length.Text(), along.Text(), ""))
	case reps > fit || reps == 0:
		c.add(Note, at, f, "there is room for %s of %s on the floor of %s before a turn, at %s a rep%s", units.Count(fit, "rep"), quote(e.Name), along.Text(), one.Length.Text(), how)
	}
}

// travelOf returns how far one rep travels along the floor: as the file says,
// or the player's broad jump if the exercise is one. It is not known for
// what stays in place.
func (c *checker) travelOf(e *sessions.Exercise) settings.Figure {
	if e.Travel > 0 {
		return settings.Figure{Length: e.Travel}
	}
	if jumps.Broad(e.Name) {
		f := c.o.Player.StandingBroadJump(c.o.Now)
		if !f.Estimated {
			f.Source = "broad_jump of the settings"
		}
		return f
	}
	return settings.Figure{}
}

// mayTravel reports whether an exercise bounds along the floor, by its name;
// what goes from side to side comes back.
func mayTravel(e *sessions.Exercise) bool {
	name := strings.ToLower(e.Name)
	for _, w := range []string{"lateral", "skater", "side", "place", "spot"} {
		if strings.Contains(name, w) {
			return false
		}
	}
	return jumps.Bounds(e.Name)
}

// area writes a floor as a sentence has it: "2 × 1 m".
func area(along, across units.Length) string {
	if along >= units.Metre && across >= units.Metre {
		return strings.TrimSuffix(along.Text(), " m") + " × " + across.Text()
	}
	return along.Text() + " × " + across.Text()
}

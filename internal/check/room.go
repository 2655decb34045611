package check

import (
	"strings"

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
			c.add(Note, at, f, "%s needs a floor of %v x %v and fits the %v x %v of the room only turned by a quarter",
				quote(e.Name), need.Along, need.Across, room.Along, room.Across)
		default:
			c.add(Error, at, f, "%s needs a floor of %v x %v, the room has %v x %v",
				quote(e.Name), need.Along, need.Across, room.Along, room.Across)
		}
	})
	if len(unsaid) > 0 {
		c.add(Note, c.s.Marks.At("blocks"), nil, "how much floor %s needs is not said; a line of floor: 2m x 1m tells", list(unsaid, maxNames))
	}
}

// ceiling holds the height that each exercise reaches against the room's.
func ceiling(c *checker) {
	if c.o.Room.Ceiling == 0 {
		return
	}
	var unsure []string
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if top := c.top(e); top.Known() {
			c.underCeiling(e, top)
		} else if e.Overhead.Kind != sessions.OverheadNone {
			unsure = append(unsure, e.Name)
		}
	})
	if len(unsure) > 0 {
		c.add(Note, c.s.Marks.At("blocks"), nil,
			"whether %s fits under the ceiling of %v cannot be told; give height or reach in the settings file", list(unsure, maxNames), c.o.Room.Ceiling)
	}
}

// underCeiling tells of an exercise whose highest point is top and that does
// not fit, or hardly.
func (c *checker) underCeiling(e *sessions.Exercise, top settings.Figure) {
	room := c.o.Room.Ceiling
	spare := room - top.Length
	f := figures{"top_m": top.Length.Metres(), "ceiling_m": room.Metres(), "estimated": top.Estimated}
	how := ""
	if top.Estimated {
		how = ", estimated: " + top.Source
	}
	at := e.Marks.At("overhead")
	switch {
	case spare < 0 && top.Estimated:
		c.add(Warning, at, f, "%s reaches %v, %v above the ceiling of %v%s", quote(e.Name), top.Length, -spare, room, how)
	case spare < 0:
		c.add(Error, at, f, "%s reaches %v, %v above the ceiling of %v", quote(e.Name), top.Length, -spare, room)
	case spare.Metres() < c.limit("headroom").Low && e.Overhead.Kind != sessions.OverheadNone:
		c.add(Note, at, f, "%s reaches %v, %v below the ceiling of %v%s", quote(e.Name), top.Length, spare, room, how)
	}
}

// top returns the highest point an exercise reaches; it is not known where the
// settings tell neither height nor reach.
func (c *checker) top(e *sessions.Exercise) settings.Figure {
	s := &c.o.Player
	reach := s.StandingReach()
	switch e.Overhead.Kind {
	case sessions.OverheadReach:
		return reach
	case sessions.OverheadJump:
		if !reach.Known() {
			return reach
		}
		up := s.VerticalJump()
		return settings.Figure{Length: reach.Length + up.Length, Estimated: reach.Estimated || up.Estimated,
			Source: strings.Join(named(sourceOf("reach", reach), sourceOf("jump", up)), "; ")}
	}
	if s.Height == 0 {
		return settings.Figure{}
	}
	return settings.Figure{Length: s.Height + e.Overhead.Above}
}

// sourceOf writes a part of a sum and where it comes from, nothing where it
// was measured.
func sourceOf(part string, f settings.Figure) string {
	if !f.Estimated {
		return ""
	}
	return part + " of " + f.Length.String() + ": " + f.Source
}

// named returns the texts that are not empty.
func named(texts ...string) []string {
	var kept []string
	for _, t := range texts {
		if t != "" {
			kept = append(kept, t)
		}
	}
	return kept
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
		c.add(Note, c.s.Marks.At("blocks"), nil, "how far a rep of %s travels is not said; a line of travel: 1.5m tells how many fit the floor", list(unsaid, maxNames))
	}
}

// turns tells of one exercise that travels.
func (c *checker) turns(e *sessions.Exercise, one settings.Figure, along units.Length) {
	fit := int(along / one.Length)
	reps := max(e.Reps, e.RepsPerSide)
	if e.Sides == sessions.AlternateReps {
		reps = 2 * e.RepsPerSide
	}
	f := figures{"travel_m": one.Length.Metres(), "room_along_m": along.Metres(), "fit": fit, "reps": reps, "estimated": one.Estimated}
	key, how := "travel", ""
	if one.Estimated {
		key, how = "name", ", estimated: "+one.Source
	}
	at := e.Marks.At(key)
	switch {
	case fit == 0 && one.Estimated:
		c.add(Warning, at, f, "a rep of %s travels %v, the floor is %v long%s", quote(e.Name), one.Length, along, how)
	case fit == 0:
		c.add(Error, at, f, "a rep of %s travels %v, the floor is %v long", quote(e.Name), one.Length, along)
	case reps > fit || reps == 0:
		c.add(Note, at, f, "%s of %s fit the floor of %v before a turn, at %v a rep%s", units.Count(fit, "rep"), quote(e.Name), along, one.Length, how)
	}
}

// travelOf returns how far one rep travels along the floor: as the file says,
// or the player's broad jump where the exercise is one. It is not known for
// what stays in place.
func (c *checker) travelOf(e *sessions.Exercise) settings.Figure {
	if e.Travel > 0 {
		return settings.Figure{Length: e.Travel}
	}
	if name := strings.ToLower(e.Name); strings.Contains(name, "broad jump") || strings.Contains(name, "long jump") {
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
	return strings.Contains(name, "bound")
}

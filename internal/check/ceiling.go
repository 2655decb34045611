package check

import (
	"slices"
	"strings"

	"coldfloor/internal/settings"
	"coldfloor/sessions"
)

// ceiling holds the height that each exercise reaches against the room's.
func ceiling(c *checker) {
	if c.o.Room.Ceiling == 0 {
		return
	}
	var l listed
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if top := c.top(e); top.Known() {
			c.underCeiling(e, top)
		} else if e.Overhead.Kind != sessions.OverheadNone {
			l.add(e, "overhead")
		}
	})
	c.tell(Note, l, "whether %s fits under the ceiling of "+c.o.Room.Ceiling.Text()+" is not known; give height or reach in the settings file")
}

// underCeiling reports an exercise whose highest point is top and that does
// not fit, or hardly.
func (c *checker) underCeiling(e *sessions.Exercise, top settings.Figure) {
	room := c.o.Room.Ceiling
	spare := room - top.Length
	f := figures{"top_m": top.Length.Metres(), "ceiling_m": room.Metres(), "estimated": top.Estimated}
	how := ""
	if top.Estimated {
		how = c.w.Estimated(top.Source)
	}
	at := e.Marks.At("overhead")
	switch {
	case spare < 0 && top.Estimated:
		c.say(Warning, at, f, c.w.AboveCeiling(c.name(e.Name), top.Length.Text(), (-spare).Text(), room.Text(), how))
	case spare < 0:
		c.say(Error, at, f, c.w.AboveCeiling(c.name(e.Name), top.Length.Text(), (-spare).Text(), room.Text(), ""))
	case spare.Metres() < c.limit("headroom").Low && e.Overhead.Kind != sessions.OverheadNone:
		below := spare.Text() + " below the"
		if spare == 0 {
			below = "as high as the"
		}
		c.add(Note, at, f, "%s reaches %s, %s ceiling of %s%s", quote(e.Name), top.Length.Text(), below, room.Text(), how)
	}
}

// top returns the highest point an exercise reaches. For what leaves the floor
// a standing height is assumed if the settings give neither height nor reach;
// for standing and reaching it is then not known.
func (c *checker) top(e *sessions.Exercise) settings.Figure {
	s, assumed := c.o.Player, ""
	if kind := e.Overhead.Kind; s.Height == 0 && (kind == sessions.OverheadAbove || kind == sessions.OverheadJump && s.Reach == 0) {
		s.Height = settings.AssumedHeight
		assumed = "a standing height of " + s.Height.Text() + ", assumed because the settings give none"
	}
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
			Source: strings.Join(given(assumed, sourceOf("reach", reach), sourceOf("jump", up)), "; ")}
	}
	if s.Height == 0 {
		return settings.Figure{}
	}
	return settings.Figure{Length: s.Height + e.Overhead.Above, Estimated: assumed != "", Source: assumed}
}

// sourceOf writes a part of a sum and where it comes from, nothing if it was
// measured.
func sourceOf(part string, f settings.Figure) string {
	if !f.Estimated {
		return ""
	}
	return part + " of " + f.Length.Text() + ": " + f.Source
}

// given returns the texts that are not empty.
func given(texts ...string) []string {
	return slices.DeleteFunc(texts, func(t string) bool { return t == "" })
}

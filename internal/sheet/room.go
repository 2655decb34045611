package sheet

import (
	"fmt"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// roomOf says what room the exercises of a session need together, as far as
// the session tells.
func roomOf(s *sessions.Session) string {
	var floor sessions.Floor
	var above units.Length
	kinds := map[sessions.OverheadKind]bool{}
	for i := range s.Blocks {
		for j := range s.Blocks[i].Exercises {
			e := &s.Blocks[i].Exercises[j]
			floor.Along = max(floor.Along, e.Floor.Along)
			floor.Across = max(floor.Across, e.Floor.Across)
			above = max(above, e.Overhead.Above)
			kinds[e.Overhead.Kind] = true
		}
	}
	size, head, arms := "", "", ""
	if floor != (sessions.Floor{}) {
		size = fmt.Sprintf("%s × %s of floor", floor.Along, floor.Across)
	}
	if above > 0 {
		head = above.String() + " above the head"
	}
	switch {
	case kinds[sessions.OverheadJump]:
		arms = "jumps with arms overhead"
	case kinds[sessions.OverheadReach]:
		arms = "arms overhead"
	}
	return join(", ", size, head, arms)
}

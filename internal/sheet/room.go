package sheet

import (
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// roomOf says what room the exercises of a session need together, as far as
// the session tells.
func roomOf(s *sessions.Session, words *text.Sheet) string {
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
		size = words.Floor(floor.Along.Text() + " × " + floor.Across.Text())
	}
	if above > 0 {
		head = words.AboveHead(above.Text())
	}
	switch {
	case kinds[sessions.OverheadJump]:
		arms = words.JumpsOverhead
	case kinds[sessions.OverheadReach]:
		arms = words.ArmsOverhead
	}
	return join(", ", size, head, arms)
}

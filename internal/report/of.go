package report

import (
	"fmt"

	"coldfloor/internal/review"
	"coldfloor/internal/units"
)

// Of returns the review of a squad, or of one player.
func Of(s *review.Squad) *Doc {
	d := &Doc{Title: "Training review", About: about(s), Meaning: Meaning(s), Left: LeftOut(s)}
	switch len(s.Players) {
	case 0:
		d.Meaning = nil
		d.Parts = []Part{{Sections: []Section{{Notes: []string{"nothing to review yet"}}}}}
	case 1:
		p := s.Players[0]
		d.Title += ", " + p.Name
		d.Parts = []Part{{Sections: Sections(p, s.Tolerance)}}
	default:
		d.Title += fmt.Sprintf(", squad of %d", len(s.Players))
		squad := Section{Title: "Squad", Table: SquadTable(s), Notes: squadNotes(s)}
		d.Parts = []Part{{Sections: append(toLookAt(s), squad, squadPain(s))}}
		if s.Planned {
			d.Parts[0].Sections = append(d.Parts[0].Sections, SquadPlanned(s))
		}
		for i, p := range s.Players {
			d.Parts = append(d.Parts, Part{ID: partID(i), Title: p.Name, Sections: Sections(p, s.Tolerance)})
		}
	}
	return d
}

// Page returns the squad's table alone, for one page.
func Page(s *review.Squad) *Doc {
	t := SquadTable(s)
	t.Links = nil
	return &Doc{Title: fmt.Sprintf("Squad of %d", len(s.Players)), About: about(s),
		Parts: []Part{{Sections: append(toLookAt(s), Section{Table: t, Notes: squadNotes(s)})}}, Left: LeftOut(s)}
}

// toLookAt says what is to be looked at, player by player; nothing if there is
// nothing.
func toLookAt(s *review.Squad) []Section {
	sec := Section{Title: "To look at"}
	for _, p := range s.Players {
		if text := Troubled(p); text != "" {
			sec.Facts = append(sec.Facts, Fact{p.Name, []string{text}})
		}
	}
	if sec.Facts == nil {
		return nil
	}
	return []Section{sec}
}

func about(s *review.Squad) string { return "as of " + s.Now.Format("Monday "+dateTime) }

// LeftOut says which runs and lines count for nothing.
func LeftOut(s *review.Squad) []string {
	var left []string
	add := func(n int, thing, why string) {
		if n > 0 {
			left = append(left, units.Count(n, thing)+" left out: "+why)
		}
	}
	add(s.Rehearsals, "rehearsal", "sped up, nobody trained in them")
	add(s.Withdrawn, "deleted session", "coldfloor log restores them")
	add(s.Empty, "session", "begun, with nothing done")
	add(s.Differ, "line", "they occur twice and differ; the first counts")
	if s.Missing > 0 {
		left = append(left, units.Count(s.Missing, "line")+" missing by their numbers: what was done there is not known, and the figures are minimums")
	}
	for _, name := range s.Namesakes {
		left = append(left, fmt.Sprintf("Two or more players are called %s: their journals have no session in common. --same %q counts them as one.", name, name))
	}
	return left
}

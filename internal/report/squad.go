package report

import (
	"fmt"
	"slices"
	"time"

	"coldfloor/internal/review"
	"coldfloor/internal/units"
)

// SquadHeader is the header of a squad's table. Its columns are those of
// review.Columns, a few of them together.
var SquadHeader = []string{"player", "last session", "sessions", "rounds done", "rest kept", "deviation", "load, 7 days", "pain"}

// SquadRight tells which columns of a squad's table hold figures.
var SquadRight = []bool{false, false, true, true, true, true, true, true}

// SquadRow is a player as a line of the squad's table.
func SquadRow(p *review.Player) []string {
	l := figure(p.Seven.Total)
	if p.Seven.Unrated > 0 {
		l = fmt.Sprintf("%s + %d not rated", l, p.Seven.Unrated)
	}
	pain := "none"
	if p.Painful > 0 {
		pain = fmt.Sprintf("PAIN, %d of %d", p.Painful, p.Sessions)
	}
	return []string{p.Name, p.Last.Format(dateOnly), fmt.Sprint(p.Sessions), percent(p.Rounds), percent(kept(&p.Rest)), deviation(&p.Rest), l, pain}
}

// percent writes a part, or that there is none.
func percent(s review.Share) string {
	part, ok := s.Part()
	if !ok {
		return unknown
	}
	return fmt.Sprintf("%.0f %%", 100*part)
}

// squadTable is a line a player, each with a link to their part.
func squadTable(s *review.Squad) Section {
	t := Table{Header: SquadHeader, Right: SquadRight}
	for i, p := range s.Players {
		t.Rows = append(t.Rows, SquadRow(p))
		t.Links = append(t.Links, partID(i))
	}
	return Section{Title: "Squad", Table: t, Notes: []string{"Rounds, rests and pain are of all sessions; the load is that of the last seven days."}}
}

// squadPain lists what every player said of pain, the latest first.
func squadPain(s *review.Squad) Section {
	type note struct {
		start time.Time
		row   []string
	}
	var all []note
	for _, p := range s.Players {
		for i, row := range PainNotes(p).Table.Rows {
			all = append(all, note{p.Pain[i].Start, append([]string{p.Name}, row...)})
		}
	}
	slices.SortStableFunc(all, func(a, b note) int { return b.start.Compare(a.start) })
	sec := Section{Title: "Pain", Table: Table{Header: []string{"player", "date", "session", "where", "note"}}}
	for _, n := range all[:min(len(all), review.MaxPain)] {
		sec.Table.Rows = append(sec.Table.Rows, n.row)
	}
	if more := len(all) - review.MaxPain; more > 0 {
		sec.Notes = []string{fmt.Sprintf("%s before these: with each player.", units.Count(more, "note"))}
	}
	if len(all) == 0 {
		sec.Notes = []string{"none told of"}
	}
	return sec
}

// partID names the part of the i-th player.
func partID(i int) string { return fmt.Sprintf("player-%d", i+1) }

// Of returns the review of a squad, or of one player.
func Of(s *review.Squad) *Doc {
	d := &Doc{Title: "Training review", About: "as of " + s.Now.Format("Monday "+dateTime), Meaning: Meaning(s), Left: LeftOut(s)}
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
		d.Parts = []Part{{Sections: []Section{squadTable(s), squadPain(s)}}}
		for i, p := range s.Players {
			d.Parts = append(d.Parts, Part{ID: partID(i), Title: p.Name, Sections: Sections(p, s.Tolerance)})
		}
	}
	return d
}

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
	add(s.Empty, "session", "begun, and nothing done")
	add(s.Differ, "line", "they stand twice and differ; the first counts")
	for _, name := range s.Namesakes {
		left = append(left, fmt.Sprintf("Two or more players are called %s: their journals have no session in common. --same %q counts them as one.", name, name))
	}
	return left
}

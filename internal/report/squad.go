package report

import (
	"fmt"
	"slices"
	"strings"

	"coldfloor/internal/review"
	"coldfloor/internal/units"
)

// Mark stands after a figure that is one to look at.
const Mark = "!"

// SquadTable is a line a player, in full.
func SquadTable(s *review.Squad) Table {
	t := Table{
		Header: []string{"player", "last session", "14 days", "rests cut short", "before", "contacts this week", "usually", "load 7 days", "usually", "days running", "jump again from", "pain"},
		Right:  []bool{false, false, false, true, true, true, true, true, true, true},
	}
	for i, p := range s.Players {
		t.Rows = append(t.Rows, squadRow(p))
		t.Links = append(t.Links, partID(i))
	}
	return t
}

// squadRow is a player as a line of SquadTable.
func squadRow(p *review.Player) []string {
	s := &p.Standing
	if !s.Known {
		row := slices.Repeat([]string{unknown}, 12)
		row[0], row[1], row[2] = p.Name, marked(p, review.ByLast, "nothing logged"), marked(p, review.BySessions, sessionsOf(s))
		return row
	}
	pain := "none reported"
	if x, _ := p.GravestPain(); x != nil {
		pain = marked(p, review.ByPain, painWords(p, x))
	}
	return []string{p.Name, marked(p, review.ByLast, since(s.Since)), marked(p, review.BySessions, sessionsOf(s)),
		marked(p, review.ByRest, share(s.Cut, review.CutLimit)), percent(s.CutBefore, review.CutLimit), countCell(s.Contacts), usual(s.ContactsUsual), usual(s.Load), usual(s.LoadUsual),
		marked(p, review.ByRunning, fmt.Sprint(s.Running)), jumpAgain(p, moment), pain}
}

// SquadNarrow is the same for a window of 80 columns. A header may have a line
// break in it.
func SquadNarrow(s *review.Squad) Table {
	t := Table{
		Header: []string{"\nplayer", "days\nago", "in\n14 d", "cut %\n14 d", "cut %\nbef.", "contacts\nwk/usual", "load\n7d/usual", "no\nrest", "jump\nagain", "\npain"},
		Right:  []bool{false, true, true, true, true, true, true, true},
	}
	for _, p := range s.Players {
		t.Rows = append(t.Rows, narrowRow(p))
	}
	return t
}

// narrowRow is a player as a line of SquadNarrow.
func narrowRow(p *review.Player) []string {
	s := &p.Standing
	if !s.Known {
		row := slices.Repeat([]string{unknown}, 10)
		row[0], row[1], row[2] = p.Name, marked(p, review.ByLast, unknown), marked(p, review.BySessions, shortSessions(s))
		return row
	}
	pain := ""
	if x, _ := p.GravestPain(); x != nil {
		level := "?"
		if x.Level != nil {
			level = fmt.Sprint(*x.Level)
		}
		pain = marked(p, review.ByPain, level) + " " + at(p.Now, x.At, "2 Jan") + " " + x.Where
	}
	return []string{p.Name, marked(p, review.ByLast, fmt.Sprint(s.Since)), marked(p, review.BySessions, shortSessions(s)),
		marked(p, review.ByRest, bare(s.Cut, review.CutLimit)), bare(s.CutBefore, review.CutLimit), countCell(s.Contacts) + "/" + usual(s.ContactsUsual),
		usual(s.Load) + "/" + usual(s.LoadUsual), marked(p, review.ByRunning, fmt.Sprint(s.Running)), jumpAgain(p, "Mon 15:04"), pain}
}

// bare writes a part in percent without its sign.
func bare(s review.Share, limits ...float64) string {
	return strings.TrimSuffix(percent(s, limits...), " %")
}

// marked puts the mark after a figure that is one to look at.
func marked(p *review.Player, by review.Column, text string) string {
	if p.Marked(by) {
		return text + Mark
	}
	return text
}

// sessionsOf says how many sessions were done in 14 days, of those planned.
func sessionsOf(s *review.Standing) string {
	if !s.Held {
		return units.Count(s.Sessions, "session")
	}
	text := fmt.Sprintf("%d of %d", s.Kept, s.Planned)
	if more := s.Sessions - s.Kept; more > 0 {
		text += fmt.Sprintf(" and %d more", more)
	}
	if s.Missed > 0 {
		text += fmt.Sprintf(", %d missed", s.Missed)
	}
	return text
}

func shortSessions(s *review.Standing) string {
	if !s.Held {
		return fmt.Sprint(s.Sessions)
	}
	text := fmt.Sprintf("%d/%d", s.Kept, s.Planned)
	if more := s.Sessions - s.Kept; more > 0 {
		text += fmt.Sprintf("+%d", more)
	}
	return text
}

// jumpAgain writes from when on a player may jump again.
func jumpAgain(p *review.Player, layout string) string {
	switch {
	case p.Jumps == nil:
		return unknown
	case !p.Jumps.Earliest.After(p.Now):
		return "now"
	}
	return at(p.Now, p.Jumps.Earliest, layout)
}

// percent writes a part that is held against limits, if any, or that there is
// none.
func percent(s review.Share, limits ...float64) string {
	part, ok := s.Part()
	if !ok {
		return unknown
	}
	return units.Percent(part, limits...)
}

// Troubled says in a sentence what is to be said of a player first, if anything.
func Troubled(p *review.Player) string {
	s := &p.Standing
	var all []string
	if x, recent := p.GravestPain(); recent {
		all = append(all, "pain "+painWords(p, x))
	}
	switch {
	case !s.Known:
		all = append(all, "nothing logged")
	case s.Since >= review.SinceMany:
		all = append(all, "last session "+since(s.Since))
	}
	if s.Missed > 0 {
		all = append(all, fmt.Sprintf("%d of %d planned missed in 14 days", s.Missed, s.Planned))
	}
	if s.CutsMany() {
		all = append(all, fmt.Sprintf("rests cut short %s in 14 days, before that %s", share(s.Cut, review.CutLimit), percent(s.CutBefore, review.CutLimit)))
	}
	if s.Running > review.RunningMax {
		all = append(all, units.Count(s.Running, "day")+" without a day of rest")
	}
	if s.Sessions > 1 && s.NotRated == s.Sessions {
		all = append(all, fmt.Sprintf("none of %d sessions rated in 14 days", s.Sessions))
	}
	return strings.Join(all, "; ")
}

// squadNotes says what the columns are, and what makes the mark.
func squadNotes(s *review.Squad) []string {
	notes := []string{fmt.Sprintf("Trouble comes first: pain of %d of 10 or more, or newly at a place, any pain, two sessions of the plan missed or nothing done for 14 days, more than %.0f %% of at least %d rests cut short; pain and rests of the last 14 days. %s marks these, and a last session %d days ago or more, and %d days running or more without rest. Pain: no training through it; with a licensed practitioner if new, severe or lasting.",
		review.SeverePain, 100*review.CutLimit, review.CutKnown, Mark, review.SinceMany, review.RunningMax+1),
		"Usually: the mean of the four weeks before. ≥: partly unknown. –: unknown."}
	if !s.Planned {
		notes = append(notes, "With --plan WEEKS sessions are compared with a plan, and missed ones shown.")
	}
	return notes
}

// squadPain lists every statement of pain, the latest first.
func squadPain(s *review.Squad) Section {
	type statement struct {
		said int64
		row  []string
	}
	var all []statement
	for _, p := range s.Players {
		for i := range p.Pain {
			all = append(all, statement{p.Pain[i].At.UnixNano(), append([]string{p.Name}, painRow(p, &p.Pain[i])...)})
		}
	}
	slices.SortStableFunc(all, func(a, b statement) int { return int(min(max(b.said-a.said, -1), 1)) })
	sec := Section{Title: "Pain", Table: Table{Header: append([]string{"player"}, PainNotes(&review.Player{}).Table.Header...), Right: []bool{false, false, true}}}
	for _, n := range all[:min(len(all), review.MaxPain)] {
		sec.Table.Rows = append(sec.Table.Rows, n.row)
	}
	if more := len(all) - review.MaxPain; more > 0 {
		sec.Notes = []string{fmt.Sprintf("%s before these: with each player.", units.Count(more, "statement"))}
	}
	if len(all) == 0 {
		sec.Notes = []string{"none reported"}
	}
	return sec
}

// partID names the part of the i-th player.
func partID(i int) string { return fmt.Sprintf("player-%d", i+1) }

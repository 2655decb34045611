package sheet

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// maxBoxes is how many rounds are ticked in boxes; beyond it a player keeps a
// tally.
const maxBoxes = 48

// Of says what the sheet of a plan says.
func Of(p *plan.Plan) *Doc {
	s := p.Session
	d := &Doc{
		Title: safetext.Clean(s.Title),
		About: join(" · ", safetext.Clean(s.For), levelOf(s.Level)),
		Total: totalOf(p.Total),
		Times: []Time{
			{plan.Work, marksOf(plan.Work), "work " + units.Clock(p.Work)},
			{plan.Rest, marksOf(plan.Rest), "rest " + units.Clock(p.Rest)},
			{plan.Change, marksOf(plan.Change, plan.Switch, plan.LeadIn), "transitions " + units.Clock(p.Change)},
		},
		Facts:    kept(units.Count(p.Totals.Sets, "set"), some(p.Totals.Reps, "rep"), some(p.Contacts, "foot contact"), roomOf(s)),
		Strip:    stripOf(p),
		Legend:   legendOf(s),
		Cautions: append(toKnow(s), text.English.Cautions()...),
		Effort:   effortAsked(),
	}
	for i := range s.Blocks {
		d.Blocks = append(d.Blocks, blockOf(p, i))
	}
	return d
}

// toKnow returns what the coach says must be known before starting.
func toKnow(s *sessions.Session) []string {
	notes := kept(safetext.Clean(s.Note))
	for i := range s.Blocks {
		if n := safetext.Clean(s.Blocks[i].Note); n != "" {
			notes = append(notes, safetext.Clean(s.Blocks[i].Title)+": "+n)
		}
	}
	return notes
}

// levelOf says the level in words.
func levelOf(l sessions.Level) string {
	if l == "" {
		return ""
	}
	return string(l) + " level"
}

// totalOf returns the length of the session, to the second.
func totalOf(d time.Duration) Figure {
	if d >= time.Hour {
		return Figure{units.Clock(d), "h"}
	}
	return Figure{units.Clock(d), "min"}
}

// some is count, but nothing for none.
func some(n int, noun string) string {
	if n == 0 {
		return ""
	}
	return units.Count(n, noun)
}

// blockOf describes block i, which counts from 0.
func blockOf(p *plan.Plan, i int) Block {
	b, totals := &p.Session.Blocks[i], &p.Blocks[i]
	block := Block{Number: fmt.Sprint(i + 1), Title: safetext.Clean(b.Title)}
	block.Facts = kept(partOf(b.Part), units.Count(b.Rounds, "round"), units.Clock(totals.Total)+" long", some(totals.Contacts, "foot contact"), trainsOf(b.Trains))
	for j := range b.Exercises {
		block.Rows = append(block.Rows, rowOf(b, j, block.Number, firstSides(p, i, j)))
	}
	if b.Rounds > 1 {
		block.Rounds = units.Count(b.Rounds, "round")
	}
	if i > 0 && p.Session.Blocks[i-1].RestAfter > 0 {
		block.Before = Rest{figure(p.Session.Blocks[i-1].RestAfter), "before block " + block.Number, true}
	}
	return block
}

// partOf names the part of a session, where it is not the main one.
func partOf(p sessions.Part) string {
	if p == sessions.Main {
		return ""
	}
	return string(p)
}

// trainsOf names the qualities that a block trains.
func trainsOf(trains []string) string {
	if len(trains) == 0 {
		return ""
	}
	return "trains " + cleaned(trains, ", ")
}

// cleaned cleans each text and joins them.
func cleaned(texts []string, sep string) string {
	clean := make([]string, len(texts))
	for i, t := range texts {
		clean[i] = safetext.Clean(t)
	}
	return join(sep, clean...)
}

// thenOf says what follows exercise j in each round.
func thenOf(b *sessions.Block, j int, block string) Rest {
	if j == len(b.Exercises)-1 {
		if b.Rounds == 1 || b.Rest == 0 {
			return Rest{}
		}
		return Rest{figure(b.Rest), "between rounds", true}
	}
	next := block + letter(j+1)
	switch own := b.Exercises[j].Rest; {
	case own != nil && *own > 0:
		return Rest{figure(*own), "then " + next, true}
	case own == nil && b.Change > 0:
		return Rest{figure(b.Change), "change, then " + next, false}
	}
	return Rest{Figure{"0", "s"}, "straight to " + next, false}
}

// firstSides returns the side that exercise j of block i starts with in each
// round.
func firstSides(p *plan.Plan, i, j int) []plan.Side {
	var first []plan.Side
	for _, s := range p.Sets {
		if s.Block == i+1 && s.Exercise == j+1 {
			first = append(first, p.Steps[s.First].Side)
		}
	}
	return first
}

// rowOf describes exercise j of a block, which counts from 0; first is the
// side it starts with in each round.
func rowOf(b *sessions.Block, j int, block string, first []plan.Side) Row {
	e := &b.Exercises[j]
	row := Row{
		ID:      block + letter(j),
		Name:    safetext.Clean(e.Name),
		Notes:   notesOf(e),
		Dose:    doseOf(e),
		Side:    sideOf(e),
		Details: detailsOf(e, first),
		Then:    thenOf(b, j, block),
	}
	for _, c := range e.Cues {
		row.Cues = append(row.Cues, kept(strings.TrimSpace(safetext.Clean(c)))...)
	}
	if b.Rounds > maxBoxes {
		row.Tally = fmt.Sprintf("tally, of %d", b.Rounds)
		return row
	}
	for i, side := range first {
		row.Rounds = append(row.Rounds, Round{i + 1, boxesOf(i+1, side)})
	}
	return row
}

// boxesOf names the boxes to tick in a round: one, or one a side in the order
// in which the sides are worked.
func boxesOf(round int, first plan.Side) []string {
	n := fmt.Sprint(round)
	switch first {
	case plan.Left:
		return []string{n + "L", n + "R"}
	case plan.Right:
		return []string{n + "R", n + "L"}
	}
	return []string{n}
}

// doseOf returns the dose of one set, of one side where it is given a side.
func doseOf(e *sessions.Exercise) Figure {
	switch n := e.Reps + e.RepsPerSide; n {
	case 0:
		return figure(e.Time + e.TimePerSide)
	case 1:
		return Figure{"1", "rep"}
	default:
		return Figure{fmt.Sprint(n), "reps"}
	}
}

// sideOf says how the dose goes for the sides, and nothing where it is not
// given a side.
func sideOf(e *sessions.Exercise) string {
	switch {
	case !e.OneSided():
		return ""
	case e.Sides == sessions.AlternateReps:
		return "each side, alternating"
	}
	return "each side"
}

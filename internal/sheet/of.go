package sheet

import (
	"fmt"
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Of says what the sheet of a plan says, in a language.
func Of(p *plan.Plan, l *text.Language) *Doc {
	s, w := l.Session(p.Session), &l.Sheet
	d := &Doc{
		Language: l,
		Title:    safetext.Clean(s.Title),
		About:    join(" · ", safetext.Clean(s.For), levelOf(s.Level, l)),
		Total:    totalOf(p.Total),
		Times: []Time{
			{plan.Work, marksOf(plan.Work), w.Work(units.Clock(p.Work))},
			{plan.Rest, marksOf(plan.Rest), w.Rest(units.Clock(p.Rest))},
			{plan.Change, marksOf(plan.Change, plan.Switch, plan.LeadIn), w.Transitions(units.Clock(p.Change))},
		},
		Facts:    kept(w.Sets(p.Totals.Sets), some(p.Totals.Reps, w.Reps), w.FootContacts(p.Contacts, jumps.AllCounted(p.Session.Blocks...)), roomOf(s, w)),
		Strip:    stripOf(p),
		Legend:   legendOf(s, w),
		Cautions: append(toKnow(s), l.Cautions()...),
		Effort:   effortAsked(l),
	}
	writer := writer{language: l, plan: p, session: s, words: w}
	for i := range s.Blocks {
		d.Blocks = append(d.Blocks, writer.block(i))
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
func levelOf(level sessions.Level, l *text.Language) string {
	if level == "" {
		return ""
	}
	return l.Sheet.Level(l.Choose.Levels[string(level)])
}

// totalOf returns the length of the session, to the second.
func totalOf(d time.Duration) Figure {
	if d >= time.Hour {
		return Figure{units.Clock(d), "h"}
	}
	return Figure{units.Clock(d), "min"}
}

// some is a count, but nothing for none.
func some(n int, count func(int) string) string {
	if n == 0 {
		return ""
	}
	return count(n)
}

// writer says what blocks and exercises of a session are, in a language.
type writer struct {
	language *text.Language
	plan     *plan.Plan
	session  *sessions.Session // the plan's, in the language
	words    *text.Sheet
}

// block describes block i, which counts from 0.
func (w *writer) block(i int) Block {
	b, totals := &w.session.Blocks[i], &w.plan.Blocks[i]
	block := Block{Number: fmt.Sprint(i + 1), Title: safetext.Clean(b.Title)}
	block.Facts = kept(w.part(b.Part), w.words.Rounds(b.Rounds), w.words.Long(units.Clock(totals.Total)),
		w.words.FootContacts(totals.Contacts, jumps.AllCounted(w.plan.Session.Blocks[i])), w.trains(b.Trains))
	for j := range b.Exercises {
		block.Rows = append(block.Rows, w.row(b, j, block.Number, firstSides(w.plan, i, j)))
	}
	if b.Rounds > 1 {
		block.Rounds = w.words.Rounds(b.Rounds)
	}
	if i > 0 && w.session.Blocks[i-1].RestAfter > 0 {
		block.Before = Rest{figure(w.session.Blocks[i-1].RestAfter), w.words.BeforeBlock(block.Number), true}
	}
	return block
}

// part names the part of a session, where it is not the main one.
func (w *writer) part(p sessions.Part) string {
	switch p {
	case sessions.WarmUp:
		return w.words.WarmUp
	case sessions.CoolDown:
		return w.words.CoolDown
	}
	return ""
}

// trains names the qualities that a block trains.
func (w *writer) trains(trains []string) string {
	if len(trains) == 0 {
		return ""
	}
	return w.words.Trains(cleaned(trains, ", "))
}

// cleaned cleans each text and joins them.
func cleaned(texts []string, sep string) string {
	clean := make([]string, len(texts))
	for i, t := range texts {
		clean[i] = safetext.Clean(t)
	}
	return join(sep, clean...)
}

// then says what follows exercise j in each round.
func (w *writer) then(b *sessions.Block, j int, block string) Rest {
	if j == len(b.Exercises)-1 {
		if b.Rounds == 1 || b.Rest == 0 {
			return Rest{}
		}
		return Rest{figure(b.Rest), w.words.BetweenRounds, true}
	}
	next := block + letter(j+1)
	switch own := b.Exercises[j].Rest; {
	case own != nil && *own > 0:
		return Rest{figure(*own), w.words.Then(next), true}
	case own == nil && b.Change > 0:
		return Rest{figure(b.Change), w.words.ChangeThen(next), false}
	}
	return Rest{Figure{"0", "s"}, w.words.StraightTo(next), false}
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

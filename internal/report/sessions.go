package report

import (
	"fmt"
	"time"

	"coldfloor/internal/review"
	"coldfloor/internal/units"
)

// PainNotes lists every statement of pain that is kept, the latest first.
func PainNotes(p *review.Player) Section {
	s := Section{Title: "Pain", Table: Table{Header: []string{"said", "of 10", "where", "note", "session"}, Right: []bool{false, true}}}
	for i := range p.Pain {
		s.Table.Rows = append(s.Table.Rows, painRow(p, &p.Pain[i]))
	}
	if len(p.Pain) == review.MaxPain {
		s.Notes = append(s.Notes, fmt.Sprintf("Statements before these are counted (%s with pain in all), not listed.", units.Count(p.Painful, "session")))
	}
	return s
}

// painRow is one statement as a row of PainNotes.
func painRow(p *review.Player, n *review.Pain) []string {
	level, where := unknown, n.Where
	if n.Level != nil {
		level = fmt.Sprint(*n.Level)
	}
	if where == "" {
		where = "not said where"
	}
	if n.New {
		where += ", new"
	}
	return []string{at(p.Now, n.At, dateTime), level, where, n.Note, at(p.Now, n.Start, dateOnly) + " " + n.Title}
}

// Notes lists what else was said, the latest first.
func Notes(p *review.Player) Section {
	s := Section{Title: "Notes", Table: Table{Header: []string{"said", "note", "session"}}}
	for _, n := range p.Notes {
		s.Table.Rows = append(s.Table.Rows, []string{at(p.Now, n.At, dateTime), n.Text, at(p.Now, n.Start, dateOnly) + " " + n.Title})
	}
	return s
}

// Exercises lists those that were left out, done in part or taken easier.
func Exercises(p *review.Player) Section {
	s := Section{Title: "Not as prescribed", Table: Table{
		Header: []string{"exercise", "sets", "left out", "in part", "taken easier", "easier as", "the last time"},
		Right:  []bool{false, true, true, true, true},
	}}
	for _, e := range p.Exercises {
		s.Table.Rows = append(s.Table.Rows, []string{e.Name, fmt.Sprint(e.Sets), fmt.Sprint(e.Skipped), fmt.Sprint(e.Partial),
			fmt.Sprint(e.Easier), e.Variant, at(p.Now, e.Last, dateOnly)})
	}
	if len(s.Table.Rows) == 0 {
		s.Table = Table{}
	}
	if p.NotBegun > 0 {
		s.Facts = []Fact{{"not begun", []string{units.Count(p.NotBegun, "set") + " that a session ended before"}}}
	}
	return s
}

// SessionList is the sessions in view, the latest first.
func SessionList(p *review.Player) Section {
	s := Section{Title: "Sessions", Table: Table{
		Header: []string{"date", "title", "rounds", "rest kept", "cut short", "overrun", "contacts", "length", "effort", "load", "pain"},
		Right:  []bool{false, false, true, true, true, true, true, true, true, true},
	}}
	for _, x := range p.Recent {
		s.Table.Rows = append(s.Table.Rows, SessionRow(x, p.Now))
	}
	if more := p.Sessions - len(p.Recent); more > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s before these: counted above, not listed.", units.Count(more, "session")))
	}
	return s
}

// SessionRow is one session as a row of SessionList.
func SessionRow(s *review.Session, now time.Time) []string {
	felt, l := unknown, unknown
	if s.Rated {
		felt, l = effort(*s.Rating.RPE), figure(s.Load)
	}
	return []string{at(now, s.Start, dateTime), s.Title(), sessionRounds(s), ofShare(kept(&s.Rest)), fmt.Sprint(s.Rest.Early),
		fmt.Sprint(s.Rest.Overrun), countCell(review.ContactsOf(s.Run)), clock(s.Elapsed), felt, l, painOf(s)}
}

// sessionRounds writes the rounds of all blocks of a session.
func sessionRounds(s *review.Session) string {
	rounds, known := s.AllRounds()
	if !known {
		return unknown
	}
	return ofShare(rounds)
}

// painOf says in a word whether there was pain, and how strong.
func painOf(s *review.Session) string {
	switch {
	case s.Painful():
		text, worst := "PAIN", -1
		for _, said := range s.Pains() {
			if said.Level != nil && *said.Level > worst {
				worst = *said.Level
				text = fmt.Sprintf("PAIN %d", worst)
			}
		}
		return text
	case s.Rating.Pain != nil:
		return "no"
	}
	return unknown
}

// RestsOf is every rest of one session, as prescribed and as taken.
func RestsOf(s *review.Session, now time.Time, t review.Tolerance) Section {
	sec := Section{Title: "Rests of " + at(now, s.Start, dateTime) + ", " + s.Title(), Table: Table{
		Header: []string{"block", "round", "after", "prescribed", "taken", "deviation", "verdict"},
		Right:  []bool{true, true, false, true, true, true},
	}}
	for i := range s.Rests {
		r := &s.Rests[i]
		d, v := t.Judge(r)
		sec.Table.Rows = append(sec.Table.Rows, []string{fmt.Sprint(r.Block), fmt.Sprint(r.Round), after(s, i),
			clock(units.Seconds(r.PrescribedS)), clock(units.Seconds(r.TakenS)), seconds(d), verdict(v)})
	}
	sec.Facts = []Fact{{"rest kept", restLines(&s.Rest)}}
	return sec
}

// verdict says in a word how a rest was kept.
func verdict(v review.Verdict) string {
	switch v {
	case review.Left:
		return "no set followed"
	case review.Early:
		return "cut short"
	}
	return string(v)
}

// after names the exercise that a rest follows.
func after(s *review.Session, rest int) string {
	for i := range s.Run.Sets {
		if s.Run.Sets[i].Place == s.Rests[rest].Place {
			return s.Run.Sets[i].Name
		}
	}
	return ""
}

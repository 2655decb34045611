package report

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
)

// done is what was done in a week of a plan, of what it asked for.
type done struct {
	season.Count
	rounds          review.Share
	unknown         int // sessions whose rounds nobody said
	contacts        journal.Count
	asked           journal.Count // contacts
	length, planned time.Duration
	rest            review.Rest
	effort, painful []string // of each session
}

// doneIn adds a week of a plan up. What is asked for is that of the days that
// have come.
func doneIn(p *review.Player, w *season.Week, t review.Tolerance) done {
	s := p.Season
	d := done{Count: w.Count(s.Today), contacts: journal.CountOf(0), asked: journal.CountOf(0)}
	for i := range w.Sessions {
		day := &w.Sessions[i]
		if day.State != season.LeftOut && (day.Date <= s.Today || day.State == season.Done) {
			dose := s.Dose(day)
			d.rounds.Prescribed += dose.Rounds
			d.asked = d.asked.Add(dose.Contacts)
			d.planned += dose.Length
		}
		if day.State == season.Done {
			for _, r := range day.Runs {
				d.add(p.Done(r))
			}
		}
	}
	return d
}

// add counts a session that was done.
func (d *done) add(s *review.Session) {
	if rounds, known := s.AllRounds(); known {
		d.rounds.Done += rounds.Done
	} else {
		d.unknown++
	}
	d.contacts = d.contacts.Add(review.ContactsOf(s.Run))
	d.length += s.Elapsed
	d.rest.Merge(&s.Rest)
	felt := unknown
	if s.Rated {
		felt = effort(*s.Rating.RPE)
	}
	d.effort = append(d.effort, felt)
	if s.Painful() {
		d.painful = append(d.painful, painOf(s))
	}
}

// Planned is the plan week by week against what was done.
func Planned(p *review.Player, t review.Tolerance) Section {
	s := p.Season
	sec := Section{Title: "Planned and done", Facts: []Fact{{"plan", []string{s.Plan.Title + ", from " + s.Plan.Starts.String()}}}, Table: Table{
		Header: plannedHeader, Right: []bool{true, false, true, true, true, true, true, true, true, true},
	}}
	for i := range s.Weeks {
		w := &s.Weeks[i]
		if w.From > s.Today && w.Count(s.Today).Done == 0 {
			break
		}
		sec.Table.Rows = append(sec.Table.Rows, plannedRow(w, doneIn(p, w, t)))
	}
	if len(sec.Table.Rows) == 0 {
		sec.Notes = append(sec.Notes, "The plan begins on "+s.Plan.Starts.String()+".")
	}
	if missed := days(s.Missed()); missed != "" {
		sec.Facts = append(sec.Facts, Fact{"missed", []string{missed}})
	}
	if open := days(s.Open()); open != "" {
		sec.Facts = append(sec.Facts, Fact{"can still be done", []string{open}})
	}
	if due := days(slices.DeleteFunc(s.On(s.Today), func(d *season.Day) bool { return d.State != season.Due })); due != "" {
		sec.Facts = append(sec.Facts, Fact{"today", []string{due}})
	}
	if next := s.Next(); next != nil {
		sec.Facts = append(sec.Facts, Fact{"next", []string{next.Date.Short() + ", " + next.Slot.Session}})
	}
	if n := len(s.Others); n > 0 {
		sec.Notes = append(sec.Notes, units.Count(n, "session")+" besides, for no day of the plan: in the other tables, not in this one.")
	}
	sec.Notes = append(sec.Notes, fmt.Sprintf("Done of what was planned up to today. A session counts for the day that it was begun for, or else for the nearest one of its name within %d days; what nothing fills by then is missed, and is not made up by doubling the next (common practice, no source).", season.Reach))
	return sec
}

var plannedHeader = []string{"week", "from", "done", "late", "missed", "rounds", "contacts", "length", "rest kept", "cut short", "effort", "pain", "besides"}

// plannedRow is a week as a row of Planned.
func plannedRow(w *season.Week, d done) []string {
	rounds := ofShare(d.rounds)
	if d.unknown > 0 {
		rounds += fmt.Sprintf(" + %d ?", d.unknown)
	}
	var besides []string
	for _, x := range []struct {
		n    int
		what string
	}{{d.Skipped, "skipped"}, {d.LeftOut, "left out"}, {d.Due, "can still be done"}} {
		if x.n > 0 {
			besides = append(besides, fmt.Sprintf("%d %s", x.n, x.what))
		}
	}
	if w.Lighter {
		besides = append(besides, "lighter")
	}
	if w.Hold {
		besides = append(besides, "hold")
	}
	return []string{fmt.Sprint(w.Number), w.From.String(), fmt.Sprintf("%d/%d", d.Done, d.Come), fmt.Sprint(d.Late), fmt.Sprint(d.Missed), rounds,
		countCell(d.contacts) + "/" + countCell(d.asked), clock(d.length) + "/" + clock(d.planned), ofShare(kept(&d.rest)), ofShare(cut(&d.rest)),
		strings.Join(d.effort, ", "), strings.Join(d.painful, ", "), strings.Join(besides, ", ")}
}

// days lists days of a plan.
func days(all []*season.Day) string {
	var texts []string
	for _, d := range all {
		texts = append(texts, d.Date.Short()+" "+d.Slot.Session)
	}
	return strings.Join(texts, ", ")
}

// SquadPlanned is a line a player and week: planned against done.
func SquadPlanned(s *review.Squad) Section {
	sec := Section{Title: "Planned and done", Table: Table{Header: append([]string{"player"}, plannedHeader...),
		Right: []bool{false, true, false, true, true, true, true, true, true, true, true}}}
	for _, p := range s.Players {
		if p.Season == nil {
			continue
		}
		for _, row := range Planned(p, s.Tolerance).Table.Rows {
			sec.Table.Rows = append(sec.Table.Rows, append([]string{p.Name}, row...))
		}
	}
	return sec
}

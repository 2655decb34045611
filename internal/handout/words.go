package handout

import (
	"fmt"
	"strings"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/sheet"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// weekName names the files of a week: week-03.
func weekName(week int) string { return fmt.Sprintf("week-%02d", week) }

// front is the page of the week, in a language.
func front(p *weeks.Plan, week weeks.Week, player *players.Player, l *text.Language, days []day) *sheet.Front {
	w := &l.Handout
	f := &sheet.Front{Language: l, Title: w.Title(l.Name(p.Title), week.Number, p.Count),
		About: join(", ", player.Name, w.From(l.Date(week.From), l.Date(week.To())), l.Name(p.For))}
	for _, d := range days {
		when := l.Date(d.Date)
		if d.Slot.At != nil {
			when += ", " + d.Slot.At.String()
		}
		f.Rows = append(f.Rows, sheet.FrontRow{When: when, What: l.Title(d.session.Title), Dose: dose(d.plan, l)})
	}
	for _, d := range week.LeftOut {
		f.Rows = append(f.Rows, sheet.FrontRow{When: l.Date(d.First), What: w.NoTraining, Dose: w.LeftOut(d.Slot.Session)})
	}
	for _, m := range p.Matches {
		if week.From <= m.Date && m.Date <= week.To() {
			f.Rows = append(f.Rows, sheet.FrontRow{When: l.Date(m.Date), What: w.Match})
		}
	}
	f.Sections = []sheet.Section{
		{Title: w.HowTo, Paragraphs: howTo(week, w)},
		{Title: w.Before, Paragraphs: l.Cautions()},
		{Title: w.Afterwards, Paragraphs: w.AfterwardsText[:]},
	}
	return f
}

// howTo says how a session is done with what was handed out.
func howTo(week weeks.Week, w *text.Handout) []string {
	file := w.Session
	if len(week.Days) > 0 {
		file = week.Days[0].FileName()
	}
	list := []string{w.With(file + ".yaml"), w.Without}
	switch {
	case week.Lighter:
		list = append(list, w.Lighter)
	case week.Hold:
		list = append(list, w.Hold)
	}
	return list
}

// dose says how long a session is and how much is in it.
func dose(p *plan.Plan, l *text.Language) string {
	said := units.Sentence(p.Total) + ", " + l.Sheet.Sets(p.Totals.Sets)
	if contacts := l.Sheet.FootContacts(p.Contacts, jumps.AllCounted(p.Session.Blocks...)); contacts != "" {
		said += ", " + contacts
	}
	return said
}

// sendBack says how a player sends back what was done.
func sendBack(name string, w *text.Handout) string {
	file := "log.jsonl"
	if name != "" {
		file = strings.ReplaceAll(strings.ToLower(folderName(name)), " ", "-") + ".jsonl"
	}
	return w.SendBack(file)
}

// join puts what is not empty together.
func join(sep string, parts ...string) string {
	var all []string
	for _, p := range parts {
		if p != "" {
			all = append(all, p)
		}
	}
	return strings.Join(all, sep)
}

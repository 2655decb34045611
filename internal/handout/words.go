package handout

import (
	"fmt"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/sheet"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// weekName names the files of a week: week-03.
func weekName(week int) string { return fmt.Sprintf("week-%02d", week) }

// front is the page of the week.
func front(p *weeks.Plan, week weeks.Week, player *players.Player, days []day) *sheet.Front {
	f := &sheet.Front{Title: fmt.Sprintf("%s, week %d of %d", p.Title, week.Number, p.Count),
		About: join(", ", player.Name, week.From.Short()+" to "+week.To().Short(), p.For)}
	for _, d := range days {
		when := d.Date.Short()
		if d.Slot.At != nil {
			when += ", " + d.Slot.At.String()
		}
		f.Rows = append(f.Rows, sheet.FrontRow{When: when, What: d.session.Title, Dose: dose(d.plan)})
	}
	for _, d := range week.LeftOut {
		f.Rows = append(f.Rows, sheet.FrontRow{When: d.First.Short(), What: "no training", Dose: d.Slot.Session + " is left out, and not made up later"})
	}
	for _, m := range p.Matches {
		if week.From <= m.Date && m.Date <= week.To() {
			f.Rows = append(f.Rows, sheet.FrontRow{When: m.Date.Short(), What: "match"})
		}
	}
	f.Sections = []sheet.Section{
		{Title: "How to do it", Paragraphs: howTo(week)},
		{Title: "Before you start", Paragraphs: text.English.Cautions()},
		{Title: "Afterwards", Paragraphs: []string{
			"Write down the rounds you did, how hard the session was from 0 to 10 half an hour later, and any pain: where, and how much from 0 to 10.",
			"A session you missed is not made up by doubling the next one.",
			"How to send it back stands in how-to-send-it-back.txt."}},
	}
	return f
}

// howTo says how a session is done with what was handed out.
func howTo(week weeks.Week) []string {
	file := "SESSION"
	if len(week.Days) > 0 {
		file = week.Days[0].FileName()
	}
	list := []string{
		"With the program: coldfloor run " + file + ".yaml",
		"Without it: play the track of the day, or follow the sheet with a clock. The rest is part of the session: keep it.",
	}
	switch {
	case week.Lighter:
		list = append(list, "This is a lighter week: do less, as fast and as well as ever.")
	case week.Hold:
		list = append(list, "This week adds nothing: do the same, better.")
	}
	return list
}

// dose says how long a session is and how much is in it.
func dose(p *plan.Plan) string {
	text := units.Sentence(p.Total) + ", " + units.Count(p.Totals.Sets, "set")
	if p.Contacts > 0 {
		text += ", " + units.Count(p.Contacts, "foot contact")
	}
	return text
}

// sendBack says how a player sends back what was done.
func sendBack(name string) string {
	file := "log.jsonl"
	if name != "" {
		file = strings.ReplaceAll(strings.ToLower(folderName(name)), " ", "-") + ".jsonl"
	}
	return `How to send back what you did

With the program, everything is logged as you train. Write a copy of it and send
that file to your coach:

    coldfloor log copy -o ` + file + `

It holds the sessions you did, the rests you took, how hard it felt, and what you
said of pain. Nothing is sent by the program itself: you decide who gets it.

Without the program, send your coach the ticked sheets, or a photo of them: the
rounds you did, how hard the session was from 0 to 10, and any pain with its
place and how much, from 0 to 10.
`
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

package preview

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
)

// WeekText writes one week of a plan day by day, and below each session in
// what it differs from its file.
func WeekText(w io.Writer, p *plan.Weeks, number int) error {
	week := p.List[number-1]
	var b strings.Builder
	fmt.Fprintf(&b, "%s\nweek %d of %d, %s to %s", safetext.Clean(p.Title), number, p.Count, week.From.Short(), week.To().Short())
	if week.Hold {
		b.WriteString(", on hold")
	}
	fmt.Fprintln(&b)
	if keep := keepNote(p, week); keep != "" {
		fmt.Fprintln(&b, keep)
	}
	fmt.Fprintln(&b)
	b.WriteString(dayTable(p, week).String())
	for _, s := range week.Sessions {
		writeChanges(&b, p, s)
	}
	for _, l := range week.LeftOut {
		fmt.Fprintf(&b, "\naway on %s: %s is left out\n", l.Date.Short(), safetext.Fit(l.Slot.Session, 40))
	}
	for _, m := range p.Matches {
		if m.Date >= week.From && m.Date <= week.To() {
			fmt.Fprintf(&b, "\nmatch on %s%s\n", m.Date.Short(), clock(m.At))
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// clock writes a time of day with a space before it, or nothing.
func clock(t *units.TimeOfDay) string {
	if t == nil {
		return ""
	}
	return " " + t.String()
}

// dayTable sets the sessions of a week in a table, by the titles that their
// files have. It fits into 80 columns.
func dayTable(p *plan.Weeks, w plan.Week) texttable.Table {
	title := 21 // columns that the figures leave, and 6 less beside a time of day
	for _, s := range w.Sessions {
		if s.Slot.At != nil {
			title = 15
		}
	}
	t := texttable.Table{
		Header: []string{"day", "session", "length", "work", "rest", "sets", "reps", "contacts"},
		Right:  []bool{false, false, true, true, true, true, true, true},
	}
	row := func(day, name string, of plan.Totals, counted bool) {
		t.Rows = append(t.Rows, []string{day, name, units.Clock(of.Total), units.Clock(of.Work), units.Clock(of.Rest),
			strconv.Itoa(of.Sets), strconv.Itoa(of.Reps), contactsCell(of.Contacts, counted)})
	}
	for _, s := range w.Sessions {
		row(s.Date.Short()+clock(s.Slot.At), safetext.Fit(p.Base(s.Slot.Session).Title, title), s.Totals, dayCounted(s))
	}
	row("whole week", "", w.Totals, weekCounted(w))
	return t
}

// writeChanges says in what a session differs from its file.
func writeChanges(b *strings.Builder, p *plan.Weeks, s plan.DayPlan) {
	changes := p.Changes(s.Planned)
	if len(changes) == 0 && !s.Moved() {
		return
	}
	fmt.Fprintf(b, "\n%s, %s; in brackets as in %s\n", s.Date.Short(), safetext.Fit(s.Session.Title, 40), safetext.Fit(s.Slot.Session, 30))
	if s.Moved() {
		fmt.Fprintf(b, "  moved from %s\n", s.First.Short())
	}
	for _, c := range changes {
		fmt.Fprintf(b, "  %s\n", safetext.Fit(c.String(), stripWidth-2))
	}
}

package preview

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
)

// WeeksText writes the preview of a plan of weeks: a table by week, the change
// of the contacts against the week before, a chart, and what is to be known of
// single weeks.
func WeeksText(w io.Writer, p *plan.Weeks, shown safetext.Repertoire) error {
	var b strings.Builder
	fmt.Fprintln(&b, safetext.Clean(p.Title))
	if about := join(", ", safetext.Clean(p.For), string(p.Level)); about != "" {
		fmt.Fprintln(&b, strings.Join(safetext.Wrap(about, stripWidth, 4), "\n"))
	}
	fmt.Fprintf(&b, "%s, %s to %s %d\n", units.Count(p.Count, "week"), p.Starts.Short(), p.End().Short(), p.End().In(time.UTC, 0).Year())
	fmt.Fprintf(&b, "\n%s, %s in all: %s, %s, %s\n\n", units.Count(sessionsOf(p), "session"), units.Clock(p.Totals.Total),
		units.Count(p.Totals.Sets, "set"), units.Count(p.Totals.Reps, "rep"), contactsText(p.Contacts, AllCounted(p)))
	b.WriteString(weekTable(p).String())
	b.WriteString("\n" + weekChart(p, shown))
	if notes := weekNotes(p); notes != "" {
		b.WriteString("\n" + notes)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func sessionsOf(p *plan.Weeks) (n int) {
	for _, w := range p.List {
		n += len(w.Sessions)
	}
	return n
}

// weekTable sets the weeks in a table.
func weekTable(p *plan.Weeks) texttable.Table {
	t := texttable.Table{
		Header: []string{"week", "from", "sessions", "length", "work", "rest", "sets", "reps", "contacts", "change"},
		Right:  []bool{true, true, true, true, true, true, true, true, true, true},
	}
	for i, w := range p.List {
		change := ""
		if i > 0 {
			change = contactsChange(w, p.List[i-1])
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(w.Number), shortDate(w.From), strconv.Itoa(len(w.Sessions)), units.Clock(w.Totals.Total),
			units.Clock(w.Work), units.Clock(w.Rest), strconv.Itoa(w.Sets), strconv.Itoa(w.Reps), contactsCell(w.Contacts, weekCounted(w)), change})
	}
	return t
}

// shortDate writes a day without its weekday: 7 Dec.
func shortDate(d units.Date) string { return d.In(time.UTC, 0).Format("2 Jan") }

// contactsChange writes how many more contacts one week has than another, or a
// dash if they are not all known.
func contactsChange(now, before plan.Week) string {
	if !weekCounted(now) || !weekCounted(before) {
		return "–"
	}
	return percentChange(now.Contacts, before.Contacts)
}

// percentChange writes how much more one number is than another, or a dash if
// there is nothing to hold it against.
func percentChange(now, before int) string {
	if before == 0 {
		return "–"
	}
	n := int(math.Round(100 * float64(now-before) / float64(before)))
	switch {
	case n > 0:
		return fmt.Sprintf("+%d %%", n)
	case n < 0:
		return fmt.Sprintf("−%d %%", -n)
	}
	return "0 %"
}

// weekNotes says what is to be known of single weeks, a line each.
func weekNotes(p *plan.Weeks) string {
	var lines []string
	for _, w := range p.List {
		if keep := keepNote(p, w); keep != "" {
			lines = append(lines, fmt.Sprintf("week %d: %s", w.Number, keep))
		}
		if w.Hold {
			lines = append(lines, fmt.Sprintf("week %d: on hold, nothing is added", w.Number))
		}
		for _, l := range w.LeftOut {
			lines = append(lines, fmt.Sprintf("week %d: away on %s, so %s is left out", w.Number, l.Date.Short(), safetext.Fit(l.Slot.Session, 40)))
		}
		for _, s := range w.Sessions {
			if s.Moved() {
				lines = append(lines, fmt.Sprintf("week %d: %s is done on %s, not on %s", w.Number, safetext.Fit(s.Slot.Session, 30), s.Date.Short(), s.First.Short()))
			}
		}
	}
	if m := matchesText(p); m != "" {
		lines = append(lines, m)
	}
	if len(lines) == 0 {
		return ""
	}
	return strings.Join(lines, "\n") + "\n"
}

// keepNote says what a lighter week keeps, as asked and as reached.
func keepNote(p *plan.Weeks, w plan.Week) string {
	keep, ok := p.IsLighter(w.Number)
	if !ok {
		return ""
	}
	note := fmt.Sprintf("lighter, %s %% asked", strconv.FormatFloat(100*keep.Share(), 'f', -1, 64))
	var reached []string
	if s := contactsKept(w); s != nil {
		reached = append(reached, fmt.Sprintf("%.0f %% of the contacts", *s))
	}
	if s := share(w.Work, w.Full.Work); s != nil {
		reached = append(reached, fmt.Sprintf("%.0f %% of the work", *s))
	}
	if len(reached) > 0 {
		note += ": " + strings.Join(reached, ", ") + " (warm-up counted)"
	}
	return note
}

// matchesText lists the days of competition.
func matchesText(p *plan.Weeks) string {
	days := matchDays(p.Plan)
	if len(days) == 0 {
		return ""
	}
	const most = 6
	var names []string
	for _, d := range days[:min(len(days), most)] {
		names = append(names, d.Short())
	}
	if more := len(days) - most; more > 0 {
		names = append(names, fmt.Sprintf("%d more", more))
	}
	word := "match: "
	if len(days) > 1 {
		word = "matches: "
	}
	return word + strings.Join(names, ", ")
}

// hasMatch reports whether a match falls in the week.
func hasMatch(p *plan.Weeks, w plan.Week) bool {
	return slices.ContainsFunc(p.Matches, func(m matchDay) bool { return w.From <= m.Date && m.Date <= w.To() })
}

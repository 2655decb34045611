package preview

import (
	"fmt"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/sessions/weeks"
)

type matchDay = weeks.Match

// barWidth is the width of the longest bar of each half of the chart.
const barWidth = 24

// weekChart draws the contacts and the minutes of each week as bars, and marks
// the weeks that are lighter, on hold or have a match.
func weekChart(p *plan.Weeks, shown safetext.Repertoire) string {
	bar := "█"
	if !shown.Has(bar) {
		bar = "#"
	}
	contacts, minutes := 0, 0
	for _, w := range p.List {
		contacts, minutes = max(contacts, w.Contacts), max(minutes, wholeMinutes(w))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "%4s %-5s %-*s %s\n", "week", "", barWidth+6, "contacts", "minutes")
	marked := map[string]bool{}
	for _, w := range p.List {
		mark := marks(p, w)
		for _, m := range strings.Fields(mark) {
			marked[m] = true
		}
		left := strings.Repeat(bar, cells(w.Contacts, contacts)) + " " + contactsCell(w.Contacts, weekCounted(w))
		right := strings.Repeat(bar, cells(wholeMinutes(w), minutes)) + fmt.Sprintf(" %d", wholeMinutes(w))
		fmt.Fprintf(&b, "%4d %-5s %s%s %s\n", w.Number, mark, left, strings.Repeat(" ", max(0, barWidth+6-len([]rune(left)))), right)
	}
	var key []string
	for _, k := range []struct{ mark, meaning string }{{"l", "l lighter"}, {"h", "h on hold"}, {"M", "M match"}} {
		if marked[k.mark] {
			key = append(key, k.meaning)
		}
	}
	if len(key) > 0 {
		fmt.Fprintf(&b, "%10s %s\n", "", strings.Join(key, "   "))
	}
	return b.String()
}

// marks returns the marks of a week with spaces between.
func marks(p *plan.Weeks, w plan.Week) string {
	var m []string
	if w.Lighter {
		m = append(m, "l")
	}
	if w.Hold {
		m = append(m, "h")
	}
	if hasMatch(p, w) {
		m = append(m, "M")
	}
	return strings.Join(m, " ")
}

// wholeMinutes is the length of a week's sessions, rounded to the minute.
func wholeMinutes(w plan.Week) int { return int(w.Totals.Total.Minutes() + 0.5) }

// cells returns how long a bar is; what is not nothing has at least one cell.
func cells(n, most int) int {
	if n == 0 {
		return 0
	}
	return max(1, n*barWidth/most)
}

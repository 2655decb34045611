package report

import (
	"fmt"
	"time"

	"coldfloor/internal/review"
)

// Weeks is what the weeks in view came to, the latest last.
func Weeks(p *review.Player) Section {
	s := Section{Title: "Weeks", Charts: []Chart{contactsChart(p), roundsChart(p)}, Table: Table{
		Header: []string{"week from", "sessions", "rounds", "contacts", "rest kept", "cut short", "load", "length", "pain"},
		Right:  []bool{false, true, true, true, true, true, true, true},
	}}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		pain := ""
		if w.Painful > 0 {
			pain = fmt.Sprintf("PAIN, %d of %d", w.Painful, w.Sessions)
		}
		s.Table.Rows = append(s.Table.Rows, []string{w.Monday.Format(dateOnly), fmt.Sprint(w.Sessions), rounds(&w.Total),
			countCell(w.ContactCount()), ofShare(kept(&w.Rest)), ofShare(cut(&w.Rest)), weekLoad(w), clock(w.Elapsed), pain})
	}
	return s
}

// WeekLine says in a line what a week came to.
func WeekLine(w *review.Week) string {
	return fmt.Sprintf("%s rounds, contacts %s, load %s", rounds(&w.Total), countCell(w.ContactCount()), weekLoad(w))
}

// weekLoad writes a week's load: of one with sessions that nobody rated it is a
// least figure, and of one that has no others it is not known.
func weekLoad(w *review.Week) string {
	l, missing := w.Load().Total, w.Lacks() > 0
	if missing && l == 0 {
		return unknown
	}
	return least(figure(l), missing)
}

// cut returns the rests cut short of those judged.
func cut(r *review.Rest) review.Share { return review.Share{Done: r.Early, Prescribed: r.Count} }

// Rests is how the rests were kept from week to week.
func Rests(p *review.Player) Section {
	s := Section{Title: "Rest kept", Facts: []Fact{{"of all rests", restLines(&p.Rest)}}, Charts: []Chart{cutChart(p), restChart(p)}, Table: Table{
		Header: []string{"week from", "rests", "kept", "cut short", "overrun", "median", "middle half", "prescribed", "taken"},
		Right:  []bool{false, true, true, true, true, true, true, true, true},
	}}
	for i := range p.Weeks {
		r := &p.Weeks[i].Rest
		middle := unknown
		if first, third, ok := r.Deviations.Middle(); ok {
			middle = seconds(first) + " to " + seconds(third)
		}
		s.Table.Rows = append(s.Table.Rows, []string{p.Weeks[i].Monday.Format(dateOnly), fmt.Sprint(r.Count), fmt.Sprint(r.Kept),
			fmt.Sprint(r.Early), fmt.Sprint(r.Overrun), deviation(r), middle, clock(r.Prescribed), clock(r.Taken)})
	}
	return s
}

// Load is the training load, day by day in weeks.
func Load(p *review.Player) Section {
	s := Section{Title: "Load", Facts: []Fact{{"last 7 days", []string{seven(p)}}},
		Charts: []Chart{loadChart(p), averagesChart(p), monotonyChart(p), strainChart(p)}, Table: Table{
			Header: []string{"week from", "Mo", "Tu", "We", "Th", "Fr", "Sa", "Su", "load", "mean", "SD", "monotony", "strain", "why none"},
			Right:  []bool{false, true, true, true, true, true, true, true, true, true, true, true, true},
		}}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		row := append([]string{w.Monday.Format(dateOnly)}, daily(w, p.Now)...)
		l := w.Load()
		mean, sd := average(l.Mean), average(l.SD)
		monotony, strain, why := w.Monotony()
		m, st := ratio(monotony), figure(strain)
		if why != "" {
			m, st = unknown, unknown
		}
		if w.Open || w.Lacks() > 0 {
			mean, sd = unknown, unknown
		}
		s.Table.Rows = append(s.Table.Rows, append(row, weekLoad(w), mean, sd, m, st, why))
	}
	return s
}

// daily returns the load of each day of a week; what is yet to come is empty.
func daily(w *review.Week, now time.Time) []string {
	var days []string
	for i, d := range w.Daily {
		switch {
		case w.Monday.AddDate(0, 0, i).Format(dateOnly) > now.Format(dateOnly) && d == 0:
			days = append(days, "")
		case w.Unknown[i] && d == 0:
			days = append(days, unknown)
		default:
			days = append(days, least(figure(d), w.Unknown[i]))
		}
	}
	return days
}

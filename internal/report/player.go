package report

import (
	"fmt"
	"time"

	"coldfloor/internal/review"
	"coldfloor/internal/trainingload"
	"coldfloor/internal/units"
)

// Sections returns a player's review, the sections in the order that they are
// read in. Single rests are judged with the tolerance.
func Sections(p *review.Player, t review.Tolerance) []Section {
	s := []Section{Overview(p), Weeks(p), Rests(p), Load(p)}
	if p.Painful > 0 {
		s = append(s, PainNotes(p))
	}
	s = append(s, SessionList(p))
	if last := lastRested(p); last != nil {
		s = append(s, RestsOf(last, t))
	}
	return s
}

// lastRested returns the latest session in view that had a rest.
func lastRested(p *review.Player) *review.Session {
	for _, s := range p.Recent {
		if len(s.Rests) > 0 {
			return s
		}
	}
	return nil
}

// Overview is what all sessions come to, and how things stand today.
func Overview(p *review.Player) Section {
	s := Section{Title: "Overview"}
	add := func(name string, lines ...string) { s.Facts = append(s.Facts, Fact{name, lines}) }
	add("sessions", fmt.Sprintf("%d since %s, %d run to their end", p.Sessions, p.First.Format(dateOnly), p.Complete))
	add("last session", fmt.Sprintf("%s, %s", p.Last.Format(moment), p.LastTitle))
	add("rounds done", share(p.Rounds)+" of those prescribed")
	add("rest kept", restLines(&p.Rest)...)
	add("foot contacts", fmt.Sprint(p.Contacts))
	add("last 7 days", seven(p))
	if d, ok := p.LastDay(); ok {
		add("weighted load", fmt.Sprintf("%s a day over %d days, %s over %d", average(d.Short), trainingload.ShortSpan, average(d.Long), trainingload.LongSpan))
	}
	add("last jumps", jumps(p)...)
	if p.Painful > 0 {
		add("pain", fmt.Sprintf("PAIN in %s, the last on %s", units.Count(p.Painful, "session"), p.Pain[0].Start.Format(dateOnly)))
	} else {
		add("pain", "none told of")
	}
	if n := p.Unrated(); n > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s without an effort: the load is too low by what is not known. coldfloor log rate RUN adds it.", units.Count(n, "session")))
	}
	if p.Ahead > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s dated after today, in no week: a clock was wrong. coldfloor log edit RUN puts the date right.", units.Count(p.Ahead, "session")))
	}
	return s
}

// restLines says how rests were kept, in a few lines.
func restLines(r *review.Rest) []string {
	if r.Count == 0 {
		return []string{unknown}
	}
	first, third, _ := r.Deviations.Middle()
	return []string{
		fmt.Sprintf("%s, %d ended early, %d overrun", share(kept(r)), r.Early, r.Overrun),
		fmt.Sprintf("median deviation %s, middle half %s to %s", deviation(r), seconds(first), seconds(third)),
		fmt.Sprintf("prescribed %s in all, taken %s", clock(r.Prescribed), clock(r.Taken)),
	}
}

// seven says what the last seven days come to.
func seven(p *review.Player) string {
	text := fmt.Sprintf("load %s from %s", figure(p.Seven.Total), units.Count(p.Seven.Sessions, "session"))
	if p.Seven.Unrated > 0 {
		return text + fmt.Sprintf(", %d of them not rated", p.Seven.Unrated)
	}
	if m, ok := p.Seven.Monotony(); ok {
		strain, _ := p.Seven.Strain()
		text += fmt.Sprintf(", monotony %s, strain %s", ratio(m), figure(strain))
	}
	return text
}

// jumps says how long ago the last jumps were, and when the interval between
// two such sessions is up.
func jumps(p *review.Player) []string {
	j := p.Jumps
	if j == nil {
		return []string{"none logged"}
	}
	here := p.Now.Location()
	lines := []string{fmt.Sprintf("%s ago, ended %s, %s", units.Hours(j.Since), j.At.In(here).Format(moment), units.Count(j.Contacts, "contact"))}
	for i, up := range []time.Time{j.Earliest, j.Full} {
		if i == 1 && j.Full.Equal(j.Earliest) {
			break
		}
		when := "in " + units.Hours(up.Sub(p.Now))
		if !up.After(p.Now) {
			when = "up"
		}
		lines = append(lines, fmt.Sprintf("%s after them: %s, %s", units.Hours(up.Sub(j.At)), up.In(here).Format(moment), when))
	}
	return lines
}

// Weeks is what the weeks in view came to, the latest last.
func Weeks(p *review.Player) Section {
	s := Section{Title: "Weeks", Charts: []Chart{contactsChart(p), roundsChart(p)}, Table: Table{
		Header: []string{"week from", "sessions", "rounds", "contacts", "rest kept", "deviation", "load", "length", "pain"},
		Right:  []bool{false, true, true, true, true, true, true, true},
	}}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		pain := ""
		if w.Painful > 0 {
			pain = fmt.Sprintf("PAIN, %d of %d", w.Painful, w.Sessions)
		}
		s.Table.Rows = append(s.Table.Rows, []string{w.Monday.Format(dateOnly), fmt.Sprint(w.Sessions), ofShare(w.Rounds),
			fmt.Sprint(w.Contacts), ofShare(kept(&w.Rest)), deviation(&w.Rest), figure(w.Load().Total), clock(w.Elapsed), pain})
	}
	return s
}

// Rests is how the rests were kept from week to week.
func Rests(p *review.Player) Section {
	s := Section{Title: "Rest kept", Facts: []Fact{{"of all rests", restLines(&p.Rest)}}, Charts: []Chart{restChart(p)}, Table: Table{
		Header: []string{"week from", "rests", "kept", "early", "overrun", "median", "middle half", "prescribed", "taken"},
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
			Header: []string{"week from", "Mo", "Tu", "We", "Th", "Fr", "Sa", "Su", "load", "mean", "SD", "monotony", "strain", "none because"},
			Right:  []bool{false, true, true, true, true, true, true, true, true, true, true, true, true},
		}}
	for i := range p.Weeks {
		w := &p.Weeks[i]
		row := append([]string{w.Monday.Format(dateOnly)}, daily(w, p.Now)...)
		l := w.Load()
		mean, sd := average(l.Mean), average(l.SD)
		if w.Open {
			mean, sd = unknown, unknown
		}
		monotony, strain, why := w.Monotony()
		m, st := ratio(monotony), figure(strain)
		if why != "" {
			m, st = unknown, unknown
		}
		s.Table.Rows = append(s.Table.Rows, append(row, figure(l.Total), mean, sd, m, st, why))
	}
	return s
}

// daily returns the load of each day of a week; what is yet to come is empty.
func daily(w *review.Week, now time.Time) []string {
	var days []string
	for i, d := range w.Daily {
		if w.Monday.AddDate(0, 0, i).Format(dateOnly) > now.Format(dateOnly) && d == 0 {
			days = append(days, "")
			continue
		}
		days = append(days, figure(d))
	}
	return days
}

// PainNotes lists every word of pain that is kept, the latest first.
func PainNotes(p *review.Player) Section {
	s := Section{Title: "Pain", Table: Table{Header: []string{"date", "session", "where", "note"}}}
	for _, n := range p.Pain {
		where := n.Where
		if where == "" {
			where = "not said where"
		}
		s.Table.Rows = append(s.Table.Rows, []string{n.Start.Format(dateTime), n.Title, where, n.Note})
	}
	if more := p.Painful - len(p.Pain); more > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s with pain before these are counted, not listed.", units.Count(more, "session")))
	}
	return s
}

// SessionList is the sessions in view, the latest first.
func SessionList(p *review.Player) Section {
	s := Section{Title: "Sessions", Table: Table{
		Header: []string{"date", "title", "rounds", "rest kept", "deviation", "early", "overrun", "contacts", "length", "effort", "load", "pain"},
		Right:  []bool{false, false, true, true, true, true, true, true, true, true, true},
	}}
	for _, x := range p.Recent {
		s.Table.Rows = append(s.Table.Rows, SessionRow(x))
	}
	if more := p.Sessions - len(p.Recent); more > 0 {
		s.Notes = append(s.Notes, fmt.Sprintf("%s before these: counted above, not listed.", units.Count(more, "session")))
	}
	return s
}

// SessionRow is one session as a row of SessionList.
func SessionRow(s *review.Session) []string {
	effort, l, pain := unknown, unknown, unknown
	if s.Rated {
		effort, l = fmt.Sprint(*s.Rating.RPE), figure(s.Load)
	}
	switch {
	case s.Painful():
		pain = "PAIN"
	case s.Rating.Pain != nil:
		pain = "no"
	}
	return []string{s.Start.Format(dateTime), s.Title(), ofShare(Rounds(s)), ofShare(kept(&s.Rest)), deviation(&s.Rest),
		fmt.Sprint(s.Rest.Early), fmt.Sprint(s.Rest.Overrun), fmt.Sprint(s.Contacts()), clock(s.Elapsed), effort, l, pain}
}

// Rounds returns the rounds of all blocks of a session.
func Rounds(s *review.Session) review.Share {
	var all review.Share
	for _, b := range s.Rounds {
		all.Done += b.Done
		all.Prescribed += b.Prescribed
	}
	return all
}

// RestsOf is every rest of one session, as prescribed and as taken.
func RestsOf(s *review.Session, t review.Tolerance) Section {
	sec := Section{Title: "Rests of " + s.Start.Format(dateTime) + ", " + s.Title(), Table: Table{
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
	if v == review.Left {
		return "no set followed"
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

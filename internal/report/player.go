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
	if p.Season != nil {
		s = append([]Section{s[0], Planned(p, t)}, s[1:]...)
	}
	for _, more := range []Section{PainNotes(p), Notes(p), Exercises(p), Tests(p)} {
		if len(more.Table.Rows) > 0 || len(more.Facts) > 0 {
			s = append(s, more)
		}
	}
	s = append(s, SessionList(p))
	if last := lastRested(p); last != nil {
		s = append(s, RestsOf(last, p.Now, t))
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

// at writes a moment in the zone of the review.
func at(now, t time.Time, layout string) string { return t.In(now.Location()).Format(layout) }

// Overview is what all sessions come to, and how things stand today: pain first,
// so that it is seen before anything else.
func Overview(p *review.Player) Section {
	s := Section{Title: "Overview"}
	if p.Sessions == 0 {
		s.Notes = []string{"nothing is logged yet"}
		return s
	}
	add := func(name string, lines ...string) { s.Facts = append(s.Facts, Fact{name, lines}) }
	add("pain", painToday(p)...)
	add("sessions", fmt.Sprintf("%d since %s, %d finished", p.Sessions, at(p.Now, p.First, dateOnly), p.Complete))
	add("last session", fmt.Sprintf("%s, %s, %s", since(p.Standing.Since), at(p.Now, p.Last, dateTime), p.LastTitle))
	add("last 14 days", fortnight(p)...)
	add("rounds done", share(p.Rounds)+" of those prescribed")
	add("rest kept", restLines(&p.Rest)...)
	add("foot contacts", p.ContactCount().String(),
		fmt.Sprintf("this week %s, usually %s a week", countCell(p.Standing.Contacts), usual(p.Standing.ContactsUsual)))
	add("last 7 days", seven(p), fmt.Sprintf("load usually %s in 7 days", usual(p.Standing.LoadUsual)))
	if d, ok := p.LastDay(); ok {
		add("weighted load", fmt.Sprintf("%s a day over %d days, %s over %d", atLeast(average(d.Short), d.ShortAtLeast), trainingload.ShortSpan,
			atLeast(average(d.Long), d.LongAtLeast), trainingload.LongSpan))
	}
	add("last jumps", jumps(p)...)
	s.Notes = overviewNotes(p)
	return s
}

// atLeast writes a figure in a sentence.
func atLeast(text string, least bool) string {
	if least {
		return "at least " + text
	}
	return text
}

// since says how many days ago something was.
func since(days int) string {
	switch {
	case days < 0:
		return "dated ahead"
	case days == 0:
		return "today"
	case days == 1:
		return "yesterday"
	}
	return fmt.Sprintf("%d days ago", days)
}

// fortnight says what a player's standing is of.
func fortnight(p *review.Player) []string {
	s := &p.Standing
	sessions := units.Count(s.Sessions, "session")
	if s.Held {
		sessions += fmt.Sprintf(", %d of %d planned, %d missed", s.Kept, s.Planned, s.Missed)
	}
	if s.Running > 1 {
		sessions += fmt.Sprintf(", %d days running", s.Running)
	}
	return []string{sessions, fmt.Sprintf("rests cut short %s, before that %s", share(s.Cut, review.CutLimit), share(s.CutBefore, review.CutLimit))}
}

// painToday says what there is of pain.
func painToday(p *review.Player) []string {
	if p.Painful == 0 {
		return []string{"none reported"}
	}
	lines := []string{"PAIN in " + units.Count(p.Painful, "session")}
	if pain, recent := p.GravestPain(); pain != nil {
		lead := "the last: "
		if recent {
			lead = "in the last 14 days: "
		}
		lines = append(lines, lead+painWords(p, pain))
	}
	return lines
}

// painWords says how strong pain was, where, when, and whether it is new.
func painWords(p *review.Player, pain *review.Pain) string {
	text := "no number"
	if pain.Level != nil {
		text = fmt.Sprintf("%d of 10", *pain.Level)
	}
	if pain.Where != "" {
		text = pain.Where + ", " + text
	}
	text += ", " + at(p.Now, pain.At, dateOnly)
	if pain.New {
		text += ", new"
	}
	return text
}

// overviewNotes says what the figures lack.
func overviewNotes(p *review.Player) []string {
	var notes []string
	if n := p.Unrated(); n > 0 {
		notes = append(notes, fmt.Sprintf("%s without an effort: the load is an underestimate. coldfloor log rate RUN adds it.", units.Count(n, "session")))
	}
	if n := p.RoundsUnknown; n > 0 {
		notes = append(notes, fmt.Sprintf("%s without reported rounds: not counted in the rounds. coldfloor log rate RUN --rounds adds them.", units.Count(n, "session")))
	}
	if n := p.Uncounted; n > 0 {
		notes = append(notes, fmt.Sprintf("%s with uncounted jumps: the foot contacts are an underestimate.", units.Count(n, "session")))
	}
	if p.Ahead > 0 {
		notes = append(notes, fmt.Sprintf("%s dated after now: a clock was wrong. coldfloor log edit RUN corrects the date.", units.Count(p.Ahead, "session")))
	}
	if p.Elsewhere > 0 {
		notes = append(notes, fmt.Sprintf("%s logged in another zone. All times are those of %s; weeks and days are those where the player was.",
			units.Count(p.Elsewhere, "session"), p.Now.Format("UTC-07:00")))
	}
	return notes
}

// restLines says how rests were kept, in a few lines.
func restLines(r *review.Rest) []string {
	if r.Count == 0 {
		return []string{unknown}
	}
	first, third, _ := r.Deviations.Middle()
	return []string{
		fmt.Sprintf("%s, %d cut short, %d overrun", share(kept(r)), r.Early, r.Overrun),
		fmt.Sprintf("median deviation %s, middle half %s to %s", deviation(r), seconds(first), seconds(third)),
		fmt.Sprintf("prescribed %s in all, taken %s", clock(r.Prescribed), clock(r.Taken)),
	}
}

// seven says what the last seven days come to.
func seven(p *review.Player) string {
	known := atLeast(figure(p.Seven.Total), p.Seven.Unrated > 0)
	if p.Seven.Unrated > 0 && p.Seven.Total == 0 {
		known = "not known"
	}
	text := fmt.Sprintf("load %s from %s", known, units.Count(p.Seven.Sessions, "session"))
	if p.Seven.Unrated > 0 {
		return text + fmt.Sprintf(", %d not rated", p.Seven.Unrated)
	}
	if m, ok := p.Seven.Monotony(); ok {
		strain, _ := p.Seven.Strain()
		text += fmt.Sprintf(", monotony %s, strain %s", ratio(m), figure(strain))
	}
	return text
}

// longAgo is from when on jumps are no matter for the next ones, whatever the
// interval.
const longAgo = 14 * 24 * time.Hour

// jumps says how long ago the last jumps were, and from when on the interval
// between two such sessions is up.
func jumps(p *review.Player) []string {
	j := p.Jumps
	if j == nil {
		return []string{"none logged"}
	}
	what := units.Count(j.Contacts.N, "contact")
	if !j.Contacts.Known {
		what = "a session with uncounted jumps"
		if j.Contacts.N > 0 {
			what = "at least " + units.Count(j.Contacts.N, "contact")
		}
	}
	if j.Since >= longAgo {
		return []string{fmt.Sprintf("%s ago, ended %s, %s", units.Count(int(j.Since/(24*time.Hour)), "day"), at(p.Now, j.At, dateTime), what)}
	}
	lines := []string{fmt.Sprintf("%s ago, ended %s, %s", units.Hours(j.Since), at(p.Now, j.At, moment), what)}
	if j.Ahead {
		lines[0] = fmt.Sprintf("dated after now, taken as just ended: a clock was wrong; %s", what)
	}
	again := fmt.Sprintf("jump again from %s (%s)", at(p.Now, j.Earliest, moment), units.Sentence(j.Earliest.Sub(j.At)))
	if !j.Full.Equal(j.Earliest) {
		again += fmt.Sprintf(" to %s (%s)", at(p.Now, j.Full, moment), units.Sentence(j.Full.Sub(j.At)))
	}
	switch {
	case !j.Full.After(p.Now):
		again += ": both are past"
	case !j.Earliest.After(p.Now):
		again += ": the first is past"
	default:
		again += ": in " + units.Hours(j.Earliest.Sub(p.Now))
	}
	return append(lines, again)
}

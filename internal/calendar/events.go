package calendar

import (
	"crypto/sha256"
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
	"coldfloor/sessions/weeks"
)

// event is one VEVENT.
type event struct {
	uid         string
	date        units.Date
	at          *units.TimeOfDay // nil: the whole day
	length      time.Duration    // 0: none is known
	cancelled   bool
	summary     string
	description string
}

// events returns the sessions week by week, with those left out if a
// revision has to take them away, and then the matches.
func events(p *plan.Weeks, o Options) []event {
	var all []event
	for _, w := range p.List {
		for _, s := range w.Sessions {
			all = append(all, session(p, s.Planned, s.Plan, o.Language))
		}
		if o.Revision == 0 {
			continue
		}
		for _, d := range w.LeftOut {
			e := session(p, d, plan.Of(p.Session(d)), o.Language)
			e.cancelled = true
			all = append(all, e)
		}
	}
	for i, m := range p.Matches {
		all = append(all, event{uid: uid(p, "match", strconv.Itoa(i+1)), date: m.Date, at: m.At,
			summary: o.Language.Calendar.Match, description: o.Language.Name(p.Title)})
	}
	return all
}

// session returns the event of one session.
func session(p *plan.Weeks, d weeks.Planned, s *plan.Plan, l *text.Language) event {
	return event{
		uid:  uid(p, strconv.Itoa(d.Dose), d.Slot.Weekday.String(), strconv.Itoa(d.Slot.Place)),
		date: d.Date, at: d.Slot.At, length: s.Total, summary: l.Title(s.Session.Title), description: describe(p, d, s, l),
	}
}

// describe says how long a session is, what is in it, and where in the plan it
// stands.
func describe(p *plan.Weeks, d weeks.Planned, s *plan.Plan, l *text.Language) string {
	dose := l.Sheet.Sets(s.Totals.Sets) + ", " + l.Sheet.Reps(s.Totals.Reps)
	if contacts := l.Sheet.FootContacts(s.Contacts, jumps.AllCounted(s.Session.Blocks...)); contacts != "" {
		dose += ", " + contacts
	}
	place := l.Calendar.Place(d.Week, p.Count)
	if keep, ok := p.IsLighter(d.Dose); ok {
		place += l.Calendar.Lighter(strconv.FormatFloat(100*keep.Share(), 'f', -1, 64))
	}
	if d.Moved() {
		place += l.Calendar.Moved(l.Date(d.First))
	}
	return strings.Join([]string{l.Calendar.Dose(units.Clock(s.Total), dose), place, l.Name(p.Title)}, "\n")
}

// uid names an event for good: by its place in the plan and not by its day.
func uid(p *plan.Weeks, place ...string) string {
	h := sha256.New()
	for _, part := range append([]string{p.Title, p.Starts.String()}, place...) {
		fmt.Fprintf(h, "%d:%s;", len(part), part)
	}
	return fmt.Sprintf("%x@coldfloor", h.Sum(nil)[:16])
}

// Layouts of section 3.3.4 and 3.3.5.
const (
	dateLayout  = "20060102"
	localLayout = "20060102T150405"
	utcLayout   = "20060102T150405Z"
)

// write writes the event. A duration in seconds belongs to one with a time
// alone: a whole day takes none but whole days (section 3.8.2.5).
func (e event) write(l *lines, o Options) {
	l.add("BEGIN", "VEVENT")
	l.add("UID", e.uid)
	l.add("DTSTAMP", o.Changed.UTC().Format(utcLayout))
	l.add("SEQUENCE", strconv.Itoa(o.Revision))
	if e.at == nil {
		l.add("DTSTART;VALUE=DATE", e.date.In(time.UTC, 0).Format(dateLayout))
		l.add("TRANSP", "TRANSPARENT")
	} else {
		l.add("DTSTART", e.date.In(time.UTC, *e.at).Format(localLayout))
		if e.length > 0 {
			l.add("DURATION", fmt.Sprintf("PT%dS", wholeSeconds(e.length)))
		}
	}
	if e.cancelled {
		l.add("STATUS", "CANCELLED")
	} else if o.Revision > 0 {
		l.add("STATUS", "CONFIRMED")
	}
	l.add("SUMMARY", escape(e.summary))
	l.add("DESCRIPTION", escape(e.description))
	if e.at != nil && o.Alarm > 0 && !e.cancelled {
		l.add("BEGIN", "VALARM")
		l.add("ACTION", "DISPLAY")
		l.add("DESCRIPTION", escape(e.summary))
		l.add("TRIGGER", fmt.Sprintf("-PT%dS", wholeSeconds(o.Alarm)))
		l.add("END", "VALARM")
	}
	l.add("END", "VEVENT")
}

// wholeSeconds rounds up.
func wholeSeconds(d time.Duration) int64 { return int64((d + time.Second - 1) / time.Second) }

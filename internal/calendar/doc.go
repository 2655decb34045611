// Package calendar writes a plan of weeks as a calendar that a telephone or a
// desk takes in (iCalendar, RFC 5545): an event a session and a match.
//
// Times are floating, form 1 of section 3.3.5: half past six is half past six
// wherever the player is. An event keeps its UID whatever day it is moved to,
// so that a calendar that is read again moves it. The same plan and options
// give the same bytes.
//
// The writing itself is done here and not by a library: those there are bring
// an HTTP client with them for reading calendars, which has no place in this
// program.
package calendar

import (
	"io"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/text"
)

// Options is how a calendar is written.
type Options struct {
	Revision int           // SEQUENCE of every event: raised by the coach with each new edition
	Alarm    time.Duration // before an event that has a time of day; 0: none
	Changed  time.Time     // the latest change of the files of the plan

	Language *text.Language // of what the events say; nil: English
}

// Write writes the calendar.
func Write(w io.Writer, p *plan.Weeks, o Options) error {
	if o.Language == nil {
		o.Language = &text.English
	}
	lines := &lines{w: w}
	lines.add("BEGIN", "VCALENDAR")
	lines.add("VERSION", "2.0")
	lines.add("PRODID", "-//coldfloor//plan of weeks//EN")
	lines.add("CALSCALE", "GREGORIAN")
	lines.add("X-WR-CALNAME", escape(o.Language.Name(p.Title)))
	for _, e := range events(p, o) {
		e.write(lines, o)
	}
	lines.add("END", "VCALENDAR")
	return lines.err
}

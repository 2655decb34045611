package today

import (
	"time"

	"coldfloor/internal/text"
	"coldfloor/internal/units"
)

// Kind is the kind of a Reason.
type Kind int

// The reasons to offer a missed session, or not to.
const (
	OneADay Kind = iota
	OwnSession
	NoJumps
	MatchToday
	MatchTomorrow
	LastJumps
	NextJumps
	Apart
)

// Reason is why a missed session may be done, or why not.
type Reason struct {
	Kind     Kind
	Span     time.Duration // since the last jumps, or to the next; 0 for any other reason
	Interval time.Duration // the least between two sessions with jumps; 0 if it is not the reason
}

// In says the reason in a language, as a sentence without its full stop.
func (r Reason) In(l *text.Language) string {
	d := &l.Day
	switch r.Kind {
	case OneADay:
		return d.OneADay
	case OwnSession:
		return d.OwnSession
	case NoJumps:
		return d.NoJumps
	case MatchToday:
		return d.JumpsMatchToday
	case MatchTomorrow:
		return d.JumpsMatchTomorrow
	case LastJumps:
		return d.LastJumps(units.Hours(r.Span), units.Hours(r.Interval))
	case NextJumps:
		return d.NextJumps(units.Hours(r.Span), units.Hours(r.Interval))
	}
	return d.Apart(units.Hours(r.Interval))
}

package logbook

import (
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

// TellAhead returns, as an error with a hint, what sessions that count are
// dated later than now: a clock was off when they were logged. It is nil if
// none is.
func TellAhead(runs []*journal.Run, now time.Time) error {
	var first *journal.Run
	n := 0
	for r := range journal.Counting(runs) {
		if r.Start.After(now) {
			if n++; first == nil {
				first = r
			}
		}
	}
	const hint = "coldfloor log edit RUN --date corrects it"
	switch {
	case n == 0:
		return nil
	case n == 1:
		return fault.New(hint, "%q is dated %s, which has not come yet: a clock was off; its jumps count as if it had just ended", first.Title(), first.Start.Format(dateTime))
	}
	return fault.New(hint, "%d sessions are dated later than now, the first, %q, %s: a clock was off; their jumps count as if they had just ended", n, first.Title(), first.Start.Format(dateTime))
}

package report

import (
	"fmt"
	"math"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/units"
)

// unknown stands for a figure that nobody knows.
const unknown = "–"

// How days and moments are written.
const (
	dateOnly = "2006-01-02"
	dateTime = "2006-01-02 15:04"
	moment   = "Mon 2 Jan 15:04"
	weekday  = "Mon 2 Jan"
)

// share writes what was done of what was prescribed, and the part, which may be
// held against limits.
func share(s review.Share, limits ...float64) string {
	if s.Prescribed <= 0 {
		return unknown
	}
	return fmt.Sprintf("%d of %d (%s)", s.Done, s.Prescribed, percent(s, limits...))
}

// ofShare writes the same for a narrow column.
func ofShare(s review.Share) string {
	if s.Prescribed <= 0 {
		return unknown
	}
	return fmt.Sprintf("%d/%d", s.Done, s.Prescribed)
}

// kept returns the rests kept of those taken.
func kept(r *review.Rest) review.Share { return review.Share{Done: r.Kept, Prescribed: r.Count} }

// seconds writes a signed length in seconds, to the tenth.
func seconds(d time.Duration) string {
	if d = d.Round(review.Resolution); d == 0 {
		return "0 s"
	}
	return fmt.Sprintf("%+.1f s", d.Seconds())
}

// deviation writes the median deviation of some rests.
func deviation(r *review.Rest) string {
	m, ok := r.Deviations.Median()
	if !ok {
		return unknown
	}
	return seconds(m)
}

// least writes a figure, or that it is one at least.
func least(text string, atLeast bool) string {
	if atLeast {
		return "≥" + text
	}
	return text
}

// countCell writes a count for a column: 16, ≥16, or a dash.
func countCell(c journal.Count) string {
	if c.Unknown() {
		return unknown
	}
	return least(fmt.Sprint(c.N), !c.Known)
}

// usual writes a mean of some weeks, or a dash.
func usual(u review.Usual) string {
	if u.Weeks == 0 || u.AtLeast && u.Mean == 0 {
		return unknown
	}
	return least(figure(u.Mean), u.AtLeast)
}

// rounds writes the rounds of some sessions for a narrow column.
func rounds(t *review.Total) string {
	text := ofShare(t.Rounds)
	if t.RoundsUnknown > 0 && text != unknown {
		text += fmt.Sprintf(" + %d ?", t.RoundsUnknown)
	}
	return text
}

// figure writes a load or a strain.
func figure(v float64) string { return fmt.Sprintf("%.0f", math.Round(v)) }

// average writes a weighted load a day.
func average(v float64) string { return fmt.Sprintf("%.1f", v) }

func ratio(v float64) string { return fmt.Sprintf("%.2f", v) }

// clock writes a length of time to the second.
func clock(d time.Duration) string { return units.Clock(d) }

// effort writes an RPE, which may have decimals.
func effort(rpe float64) string { return fmt.Sprintf("%.3g", rpe) }

package review

import (
	"fmt"
	"time"

	"coldfloor/internal/trainingload"
)

// Load returns what the week's daily loads come to.
func (w *Week) Load() trainingload.Week { return trainingload.WeekOf(w.Daily) }

// Lacks returns of how many sessions the load of the week is not known: those
// begun in it, or, if one that was gone on with is the only one, that one.
func (w *Week) Lacks() int {
	for _, unknown := range w.Unknown {
		if unknown {
			return max(1, w.Unrated())
		}
	}
	return w.Unrated()
}

// Monotony returns the week's monotony and strain, or why it has none: of an
// open week and of one with sessions not rated nobody knows them.
func (w *Week) Monotony() (monotony, strain float64, why string) {
	l := w.Load()
	m, ok := l.Monotony()
	s, _ := l.Strain()
	switch {
	case w.Open:
		return 0, 0, "the week is not over"
	case w.Lacks() == 1:
		return 0, 0, "a session is not rated"
	case w.Lacks() > 1:
		return 0, 0, fmt.Sprintf("%d sessions are not rated", w.Lacks())
	case l.Total == 0:
		return 0, 0, "no load"
	case !ok:
		return 0, 0, "every day is alike"
	}
	return m, s, ""
}

// day is a date as the number of days since 1 January 1970.
type day int

const secondsADay = 24 * 60 * 60

// dayOf returns the date of t in its own zone.
func dayOf(t time.Time) day {
	y, m, d := t.Date()
	return day(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / secondsADay)
}

// date returns d as midnight UTC.
func (d day) date() time.Time { return time.Unix(int64(d)*secondsADay, 0).UTC() }

// monday returns the Monday of d's week. 1 January 1970 was a Thursday.
func (d day) monday() day { return d - ((d+3)%7+7)%7 }

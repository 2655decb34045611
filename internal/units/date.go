package units

import (
	"errors"
	"fmt"
	"time"
)

// Date is a day of the calendar, in days since 1 January 1970: whole numbers
// are added to it and dates are compared as they are. It has no zone.
type Date int

// Hints on how to write a day and a time of day.
const (
	DateHint      = "write it as 2026-12-07: year, month, day"
	TimeOfDayHint = "write it as 18:30, from 00:00 to 23:59"
)

const dateLayout = "2006-01-02"

// ParseDate reads a day written as 2026-12-07. It refuses a day that the
// calendar does not have; the error reads on from the text, as in
// `"2027-02-30"` + " is not a real date".
func ParseDate(s string) (Date, error) {
	t, err := time.Parse(dateLayout, s)
	var p *time.ParseError
	switch {
	case errors.As(err, &p) && (p.Message == ": day out of range" || p.Message == ": month out of range"):
		return 0, errors.New("is not a real date")
	case err != nil:
		return 0, errors.New("is not a date")
	case t.Year() < 1:
		return 0, errors.New("is not a real date")
	}
	return DateOf(t), nil
}

// DateOf returns the day that t falls on in its own zone.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60))
}

// In returns the moment at which the day has lasted so long in a zone, on its
// clocks: d.In(time.Local, 0) is its midnight.
func (d Date) In(zone *time.Location, after TimeOfDay) time.Time {
	y, m, day := d.utc().Date()
	return time.Date(y, m, day, 0, int(after), 0, 0, zone)
}

// Weekday returns the day of the week.
func (d Date) Weekday() time.Weekday { return d.utc().Weekday() }

// String writes the day as ParseDate reads it.
func (d Date) String() string { return d.utc().Format(dateLayout) }

// Short writes the day for a reader who knows the year: Mon 7 Dec.
func (d Date) Short() string { return d.utc().Format("Mon 2 Jan") }

// MarshalText writes the day as String does, for JSON.
func (d Date) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads what MarshalText wrote.
func (d *Date) UnmarshalText(text []byte) (err error) {
	*d, err = ParseDate(string(text))
	return err
}

func (d Date) utc() time.Time { return time.Unix(int64(d)*24*60*60, 0).UTC() }

// TimeOfDay is a time on the wall's clock, in minutes since midnight.
type TimeOfDay int

// ParseTimeOfDay reads a time from 00:00 to 23:59; the first nought may be
// left out. The error reads on from the text.
func ParseTimeOfDay(s string) (TimeOfDay, error) {
	t, err := time.Parse("15:04", s)
	if err != nil {
		return 0, errors.New("is not a time of day")
	}
	return TimeOfDay(t.Hour()*60 + t.Minute()), nil
}

// String writes the time with two digits for hours and minutes.
func (t TimeOfDay) String() string { return fmt.Sprintf("%02d:%02d", t/60, t%60) }

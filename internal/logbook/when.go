package logbook

import (
	"errors"
	"strings"
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/units"
)

// ParseDate reads when a session began, in now's zone: a day with or without a
// time of day, "today" or "yesterday" for the day, or a time alone. A day alone
// keeps the time of day of like, or means noon if like is zero, or now if
// that is still to come; a time alone keeps the day of like, or means today. A moment after now is refused.
func ParseDate(s string, now, like time.Time) (time.Time, error) {
	noon := time.Date(now.Year(), now.Month(), now.Day(), 12, 0, 0, 0, now.Location())
	if like.IsZero() {
		like = noon
	}
	like = like.In(now.Location())
	day, clock, _ := strings.Cut(strings.ToLower(strings.TrimSpace(strings.Replace(s, "T", " ", 1))), " ")
	if strings.Contains(day, ":") && clock == "" {
		day, clock = like.Format(time.DateOnly), day
	}
	switch day {
	case "today":
		day = noon.Format(time.DateOnly)
	case "yesterday":
		day = noon.AddDate(0, 0, -1).Format(time.DateOnly)
	}
	if clock == "" {
		clock = like.Format("15:04")
		if day == now.Format(time.DateOnly) && clock > now.Format("15:04") {
			clock = now.Format("15:04")
		}
	}
	at, err := time.ParseInLocation(dateTime, day+" "+strings.TrimSpace(clock), now.Location())
	switch {
	case err != nil:
		return at, fault.New("write it as 2026-07-14, \"2026-07-14 18:30\", \"yesterday 18:30\" or 18:30", "%q is not a date", s)
	case at.After(now) && day == noon.Format(time.DateOnly):
		return at, fault.New("name the day if it was not today", "%q has not come yet", s)
	case at.After(now):
		return at, fault.New("only what has been done can be logged", "%q has not come yet", s)
	}
	return at, nil
}

// longest bounds a session's length, against a slip of the hand.
const longest = 24 * time.Hour

// ParseTaken reads how long a session took.
func ParseTaken(s string) (time.Duration, error) {
	d, err := units.ParseDuration(s)
	if err == nil && (d == 0 || d > longest) {
		err = errors.New("is not above 0 and at most 24 hours")
	}
	if err != nil {
		return 0, fault.New("write it as 40min, 1h5min or 40:00", "length %q %w", s, err)
	}
	return d, nil
}

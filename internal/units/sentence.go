package units

import (
	"strings"
	"time"
)

// Sentence writes a length of time as a sentence has it, with the unit in
// full: 0.7 s, 45 s, 90 s, 10 min, 48 h, and 2:05 or 1:02:30 for what is no
// whole number of them. Below 2 min it counts seconds, rounded to a tenth, and
// above it rounds to the second.
func Sentence(d time.Duration) string {
	n, unit := sentence(d)
	if unit == "" {
		return n
	}
	return n + " " + unit
}

// SentenceRange writes a range of two lengths of time, the unit once if both
// share it: 60–90 s, 1–2 min, 48–72 h, 30 s to 2 min. Two equal ends are one.
func SentenceRange(low, high time.Duration) string {
	n, unit := sentence(low)
	m, other := sentence(high)
	if low == time.Minute && other == "min" {
		n, unit = "1", other
	}
	switch {
	case low == high:
		return Sentence(low)
	case low == 0:
		return "0–" + Sentence(high)
	case unit == other && unit != "":
		return n + "–" + m + " " + unit
	}
	return Sentence(low) + " to " + Sentence(high)
}

// sentence returns the number and the unit apart; the unit is empty for a
// clock's figures.
func sentence(d time.Duration) (n, unit string) {
	if d < 0 {
		n, unit = sentence(d.Abs())
		return "-" + n, unit
	}
	if tenths := d.Round(100 * time.Millisecond); tenths < 2*time.Minute {
		return fraction(int64(tenths), int64(time.Second)), "s"
	}
	d = d.Round(time.Second)
	switch {
	case d%time.Hour == 0:
		return itoa(int64(d / time.Hour)), "h"
	case d%time.Minute == 0:
		return itoa(int64(d / time.Minute)), "min"
	}
	return Clock(d), ""
}

// Text writes the length as a sentence has it: 2 m, 1.85 m, 35 cm, 5 mm.
func (l Length) Text() string {
	s := l.String()
	i := strings.IndexAny(s, "cm")
	return s[:i] + " " + s[i:]
}

package units

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
)

// durationUnits are the units of a typed duration, in the order in which they
// may be written.
var durationUnits = []struct {
	name string
	unit time.Duration
}{{"h", time.Hour}, {"m", time.Minute}, {"s", time.Second}, {"ms", time.Millisecond}}

// DurationHint says how to write a duration.
const DurationHint = "write it as 90s, 1min30s, 1.5s, 700ms, 1:30 or a bare number of seconds"

// ParseDuration reads a duration as a coach types it: 90s, 1min30s, 1m30s, 1.5s,
// 700ms, 1h, 20 sec, 1:30 (minutes:seconds), 1:02:30, or a bare number of seconds. Spaces may
// stand before a unit and between the parts. It is exact to the nanosecond
// and refuses whatever is negative, not finite, finer or too large; the error
// quotes nothing and reads on from the text, as in `"1x"` + " is not a duration".
func ParseDuration(s string) (time.Duration, error) {
	s = strings.Trim(s, " ")
	switch {
	case strings.HasPrefix(s, "-"):
		return 0, errors.New("is negative; a duration is 0 or more")
	case isNonFinite(s):
		return 0, errors.New("is not a finite duration")
	case strings.Contains(s, ":"):
		return parseClock(s)
	}
	if d, err := scaled(s, time.Second); err == nil || digits(strings.ReplaceAll(s, ".", "")) {
		return d, err
	}
	return parseParts(s)
}

// isNonFinite reports whether s is YAML's spelling, or a common one, of
// infinity or not-a-number.
func isNonFinite(s string) bool {
	switch strings.ToLower(strings.TrimLeft(s, "+.")) {
	case "inf", "nan", "infinity":
		return true
	}
	return false
}

// parseParts reads numbers with units, each unit once and the larger first.
func parseParts(s string) (time.Duration, error) {
	var total time.Duration
	next := 0 // index of the largest unit that may follow
	for s != "" {
		n, rest := number(s)
		name, after := unitName(strings.TrimLeft(rest, " "))
		name = shortUnit(name)
		i := next
		for i < len(durationUnits) && durationUnits[i].name != name {
			i++
		}
		if n == "" || i == len(durationUnits) {
			return 0, errors.New("is not a duration")
		}
		d, err := scaled(n, durationUnits[i].unit)
		if err != nil {
			return 0, err
		}
		if total > math.MaxInt64-d {
			return 0, errTooLarge
		}
		total += d
		next, s = i+1, strings.TrimLeft(after, " ")
	}
	if next == 0 {
		return 0, errors.New("is not a duration")
	}
	return total, nil
}

// shortUnit returns the unit that a name in full means: min for m, sec for s.
func shortUnit(name string) string {
	switch name {
	case "min", "mins":
		return "m"
	case "sec", "secs":
		return "s"
	}
	return name
}

// unitName splits the longest prefix of lower-case letters off s.
func unitName(s string) (name, rest string) {
	i := 0
	for i < len(s) && s[i] >= 'a' && s[i] <= 'z' {
		i++
	}
	return s[:i], s[i:]
}

// parseClock reads M:SS or H:MM:SS; the seconds may have a fraction.
func parseClock(s string) (time.Duration, error) {
	fields := strings.Split(s, ":")
	if len(fields) > 3 {
		return 0, errors.New("is not a duration")
	}
	var total int64 // in the unit of the field read last; nanoseconds at the end
	for i, f := range fields {
		last := i == len(fields)-1
		whole, _, _ := strings.Cut(f, ".")
		if !digits(whole) || i > 0 && len(whole) != 2 || !last && whole != f {
			return 0, errors.New("is not a duration")
		}
		if i > 0 && whole > "59" {
			return 0, errors.New("has more than 59 after a colon")
		}
		scale := int64(1)
		if last {
			scale = int64(time.Second)
		}
		n, err := decimal(f, scale)
		if err != nil {
			return 0, err
		}
		if total > (math.MaxInt64-n)/60/scale {
			return 0, errTooLarge
		}
		total = total*60*scale + n
	}
	return time.Duration(total), nil
}

// scaled reads a decimal number of units, exactly.
func scaled(s string, unit time.Duration) (time.Duration, error) {
	power, factor := unit, int64(1) // unit = power × factor, power a power of ten
	if unit > time.Second {
		power, factor = time.Second, int64(unit/time.Second)
	}
	n, err := decimal(s, int64(power))
	if err != nil {
		return 0, err
	}
	if n > math.MaxInt64/factor {
		return 0, errTooLarge
	}
	return time.Duration(n * factor), nil
}

// FormatDuration writes d as a coach would type it, so that ParseDuration
// reads it back unchanged: 45s, 90s, 2min30s, 1.5s, 700ms, 1h5min, and 0s for
// nothing. Minutes are never m, which reads as metres. A negative d has a minus
// sign.
func FormatDuration(d time.Duration) string {
	if d < 0 {
		return "-" + FormatDuration(d.Abs())
	}
	if d > 0 && d < time.Second {
		return fraction(int64(d), int64(time.Millisecond)) + "ms"
	}
	var b strings.Builder
	if h := d / time.Hour; h > 0 {
		b.WriteString(itoa(int64(h)) + "h")
		d %= time.Hour
	}
	if d >= 2*time.Minute || b.Len() > 0 && d >= time.Minute {
		b.WriteString(itoa(int64(d/time.Minute)) + "min")
		d %= time.Minute
	}
	if d > 0 || b.Len() == 0 {
		b.WriteString(fraction(int64(d), int64(time.Second)) + "s")
	}
	return b.String()
}

// Clock writes d as M:SS, or H:MM:SS from an hour on, rounded to the second, so
// that a length reads the same wherever it stands. Time that is counted is cut
// to whole seconds first: down if it is counted up, and up if it is what is left.
func Clock(d time.Duration) string {
	if d < 0 {
		return "-" + Clock(d.Abs())
	}
	d = d.Round(time.Second)
	h, m, s := d/time.Hour, d/time.Minute%60, d/time.Second%60
	if h > 0 {
		return fmt.Sprintf("%d:%02d:%02d", h, m, s)
	}
	return fmt.Sprintf("%d:%02d", m, s)
}

// ClockMillis writes d as M:SS.mmm, or H:MM:SS.mmm from an hour on, with what
// is less than a millisecond cut off.
func ClockMillis(d time.Duration) string {
	if d < 0 {
		return "-" + ClockMillis(d.Abs())
	}
	return fmt.Sprintf("%s.%03d", Clock(d.Truncate(time.Second)), d/time.Millisecond%1000)
}

func itoa(n int64) string { return strconv.FormatInt(n, 10) }

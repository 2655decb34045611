package sheet

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/units"
)

// figure returns a length of time as a short number: 75 s, 0.5 s, 2 min, 2:30.
func figure(d time.Duration) Figure {
	switch {
	case d < 2*time.Minute:
		return Figure{seconds(d), "s"}
	case d%time.Second != 0:
		return Figure{units.FormatDuration(d), ""}
	case d%time.Minute == 0 && d < 100*time.Minute:
		return Figure{fmt.Sprint(int(d / time.Minute)), "min"}
	}
	return Figure{units.Clock(d), ""}
}

// seconds writes d as a bare number of seconds.
func seconds(d time.Duration) string {
	text := fmt.Sprintf("%d.%09d", d/time.Second, d%time.Second)
	return strings.TrimRight(strings.TrimRight(text, "0"), ".")
}

// letter returns the n-th of a, b, … z, aa, ab, …, counting from 0.
func letter(n int) string {
	s := ""
	for n++; n > 0; n = (n - 1) / 26 {
		s = string(rune('a'+(n-1)%26)) + s
	}
	return s
}

// join joins the parts that are not empty.
func join(sep string, parts ...string) string {
	return strings.Join(kept(parts...), sep)
}

// kept returns the parts that are not empty.
func kept(parts ...string) []string {
	var full []string
	for _, p := range parts {
		if p != "" {
			full = append(full, p)
		}
	}
	return full
}

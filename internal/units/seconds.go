package units

import (
	"fmt"
	"math"
	"time"
)

// Seconds returns a length of time given in seconds, as journals and exports
// hold it, rounded to the millisecond. What a time.Duration cannot hold becomes
// the longest or the shortest one, and what is not a number nothing.
func Seconds(s float64) time.Duration {
	const most = float64(math.MaxInt64 / int64(time.Millisecond))
	switch ms := math.Round(s * 1000); {
	case math.IsNaN(ms):
		return 0
	case ms >= most:
		return math.MaxInt64
	case ms <= -most:
		return math.MinInt64
	default:
		return time.Duration(ms) * time.Millisecond
	}
}

// InSeconds returns d in seconds, rounded to the millisecond, as journals and
// exports hold it.
func InSeconds(d time.Duration) float64 { return Thousandths(d.Seconds()) }

// Thousandths rounds v to three decimals.
func Thousandths(v float64) float64 { return math.Round(v*1000) / 1000 }

// Count returns n and what there are n of, with an s if n is not 1. What has
// another plural gives it.
func Count(n int, noun string, plural ...string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case len(plural) > 0:
		return fmt.Sprintf("%d %s", n, plural[0])
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

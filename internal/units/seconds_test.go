package units

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestSeconds(t *testing.T) {
	for s, want := range map[float64]time.Duration{
		0: 0, 1.5: 1500 * time.Millisecond, 0.0004: 0, 59.9996: time.Minute, -2.5: -2500 * time.Millisecond,
		math.Inf(1): math.MaxInt64, math.Inf(-1): math.MinInt64, 1e300: math.MaxInt64,
	} {
		if got := Seconds(s); got != want {
			t.Errorf("Seconds(%v) = %v, want %v", s, got, want)
		}
	}
	if got := Seconds(math.NaN()); got != 0 {
		t.Errorf("Seconds(NaN) = %v", got)
	}
	rapid.Check(t, func(t *rapid.T) {
		d := time.Duration(rapid.Int64Range(-1e12, 1e12).Draw(t, "ms")) * time.Millisecond
		if got := Seconds(InSeconds(d)); got != d {
			t.Fatalf("%v comes back as %v", d, got)
		}
	})
}

func TestCount(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{Count(1, "set"), "1 set"}, {Count(0, "set"), "0 sets"}, {Count(2, "set"), "2 sets"}, {Count(3, "person", "people"), "3 people"},
	} {
		if c.got != c.want {
			t.Errorf("Count wrote %q, want %q", c.got, c.want)
		}
	}
}

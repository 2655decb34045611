package units

import (
	"testing"
	"time"
)

// Two days less 19 minutes are not yet 48 hours.
func TestHours(t *testing.T) {
	for d, want := range map[time.Duration]string{
		48*time.Hour - 19*time.Minute:   "47 h",
		48 * time.Hour:                  "48 h",
		19*time.Minute + 59*time.Second: "19 min",
		10*time.Hour + 59*time.Minute:   "10 h",
		9*time.Hour + 59*time.Minute:    "9 h 59 min",
		3 * time.Hour:                   "3 h",
		59 * time.Second:                "0 min",
		-time.Hour:                      "0 min",
	} {
		if got := Hours(d); got != want {
			t.Errorf("%v is written %q, want %q", d, got, want)
		}
	}
}

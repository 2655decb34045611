package run

import (
	"testing"
	"time"
)

// A machine that sleeps lets the fine reading stand; what the coarse one tells is
// counted once, and its steps are not.
func TestWithSleep(t *testing.T) {
	defer slept.Store(0)
	slept.Store(0)
	for i, c := range []struct{ fine, coarse, want time.Duration }{
		{time.Second, 1016 * time.Millisecond, time.Second},
		{2 * time.Second, 1990 * time.Millisecond, 2 * time.Second},
		{3 * time.Second, 10 * time.Second, 10 * time.Second},
		{4 * time.Second, 11010 * time.Millisecond, 11 * time.Second},
		{5 * time.Second, 11990 * time.Millisecond, 12 * time.Second},
	} {
		if got := withSleep(c.fine, c.coarse); got != c.want {
			t.Errorf("%d: %v, want %v", i, got, c.want)
		}
	}
}

package run

import (
	"time"

	"golang.org/x/sys/unix"
)

// bootCountsSleep: CLOCK_MONOTONIC_RAW "will continue to increment while the
// system is asleep", and is "unaffected by frequency or time adjustments",
// clock_gettime(3) of macOS. Go's own monotonic reading stands meanwhile.
const bootCountsSleep = true

// sinceBoot returns the time since a moment before the program's start.
func sinceBoot() time.Duration {
	var t unix.Timespec
	if err := unix.ClockGettime(unix.CLOCK_MONOTONIC_RAW, &t); err != nil {
		return time.Since(process) // a system before macOS 10.12
	}
	return time.Duration(t.Nano())
}

// process is a moment at the program's start.
var process = time.Now()

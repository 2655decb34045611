package run

import (
	"time"

	"golang.org/x/sys/unix"
)

// bootCountsSleep: CLOCK_BOOTTIME "also includes any time that the system is
// suspended", clock_gettime(2).
const bootCountsSleep = true

// sinceBoot returns the time since the machine was started.
func sinceBoot() time.Duration {
	var t unix.Timespec
	if err := unix.ClockGettime(unix.CLOCK_BOOTTIME, &t); err != nil {
		return time.Since(process) // a kernel before 2.6.39
	}
	return time.Duration(t.Nano())
}

// process is a moment at the program's start.
var process = time.Now()

//go:build !linux && !darwin && !windows

package run

import "time"

// bootCountsSleep: on some of these systems what Go reads stops during sleep.
const bootCountsSleep = false

// sinceBoot returns the time since the program was started.
func sinceBoot() time.Duration { return time.Since(process) }

// process is a moment at the program's start.
var process = time.Now()

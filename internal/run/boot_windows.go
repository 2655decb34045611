package run

import (
	"sync/atomic"
	"time"
	"unsafe"

	"golang.org/x/sys/windows"
)

// bootCountsSleep: both readings of sinceBoot do, and setting the clock does not
// change them. What Go reads may stand.
const bootCountsSleep = true

// interruptTime reads the interrupt time, which "includes the time the system
// spends in sleep or hibernation" (Microsoft, realtimeapiset.h). It is there from
// Windows 10 on.
var interruptTime = windows.NewLazySystemDLL("kernelbase.dll").NewProc("QueryInterruptTimePrecise")

var hasInterruptTime = interruptTime.Find() == nil

// sinceBoot returns the time since a moment before the program's start.
func sinceBoot() time.Duration {
	if !hasInterruptTime {
		return withSleep(time.Since(process), windows.DurationSinceBoot()-bootBefore)
	}
	var hundreds uint64 // of nanoseconds
	_, _, _ = interruptTime.Call(uintptr(unsafe.Pointer(&hundreds)))
	return time.Duration(hundreds) * 100
}

// process is a moment at the program's start, and bootBefore how long the machine
// had been up then.
var process, bootBefore = time.Now(), windows.DurationSinceBoot()

// slept is how long the machine has slept since, as far as was seen.
var slept atomic.Int64

// withSleep returns a fine reading that may stand in sleep with the sleep that a
// coarse one tells of, which is right to some hundredths of a second.
func withSleep(fine, coarse time.Duration) time.Duration {
	for {
		had := slept.Load()
		if coarse-fine-time.Duration(had) < time.Second {
			return fine + time.Duration(had)
		}
		slept.CompareAndSwap(had, int64(coarse-fine))
	}
}

package run

import (
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

// sinceBoot returns the time since the machine was started; to 10 to 16 ms where
// there is no finer reading, as in Wine.
func sinceBoot() time.Duration {
	if !hasInterruptTime {
		return windows.DurationSinceBoot()
	}
	var hundreds uint64 // of nanoseconds
	_, _, _ = interruptTime.Call(uintptr(unsafe.Pointer(&hundreds)))
	return time.Duration(hundreds) * 100
}

package run

import (
	"time"
	"unsafe"

	"golang.org/x/sys/windows"
)

// interruptTime reads the interrupt time, which "includes the time the system
// spends in sleep or hibernation" and which setting the clock does not change
// (Microsoft, realtimeapiset.h). It is there from Windows 10 on; nil: it is not.
var interruptTime = func() *windows.LazyProc {
	for _, name := range []string{"QueryInterruptTimePrecise", "QueryInterruptTime"} { // the second to some milliseconds
		if p := windows.NewLazySystemDLL("kernelbase.dll").NewProc(name); p.Find() == nil {
			return p
		}
	}
	return nil
}()

// bootCountsSleep: the interrupt time does; what Go reads may stand.
var bootCountsSleep = interruptTime != nil

// sinceBoot returns the time since the machine was started, or since the program
// was where that cannot be told.
func sinceBoot() time.Duration {
	if !bootCountsSleep {
		return time.Since(process)
	}
	var hundreds uint64 // of nanoseconds
	_, _, _ = interruptTime.Call(uintptr(unsafe.Pointer(&hundreds)))
	return time.Duration(hundreds) * 100
}

// process is a moment at the program's start.
var process = time.Now()

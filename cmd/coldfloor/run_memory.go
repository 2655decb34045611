package main

import (
	"os"
	"runtime/debug"
)

// screenGC is how much garbage, in per cent of what is in use, a session on the
// screen lets grow before it is collected; Go's own default is 100. A session
// makes little of it and lasts an hour beside other programs: measured at 200×60,
// it holds 1.4 MB less so, for 0.05 % of a core.
const screenGC = 50

// keepSmall has the program hold less memory from now on, at some cost in time,
// unless its user has said by GOGC what it may hold. Before a session begins the
// time counts for more: the first picture came a third later so.
func keepSmall() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(screenGC)
	}
}

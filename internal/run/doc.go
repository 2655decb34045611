// Package run is one run of a session from start to end: the flow of questions
// before it, its clock and engine, its lines in the journal, its sound, and what
// is said of it afterwards. A screen or plain lines drive it: they show, ask,
// and decide nothing.
//
// A Flow is made with NewFlow and opened. Then, as long as Next says what is
// needed, the driver asks it; at last it starts the run, which is an Active,
// and looks at the clocks with Tick at least four times a second.
package run

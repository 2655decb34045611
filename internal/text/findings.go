package text

// Findings is what the errors and warnings of a check say, and what it says of
// the last jumps: all that a player is shown of it. Names come quoted, lengths
// and ranges written out, and a range with its source if it is called cited.
type Findings struct {
	Quote     func(name string) string
	OwnLimit  string                     // in place of a source
	Source    func(source string) string // of a published range, or that it has none
	Estimated func(why string) string    // after a figure

	AboveCeiling func(exercise, top, over, ceiling, estimated string) string
	Floor        func(exercise, need, room string) string
	Travel       func(exercise, one, along, estimated string) string

	Contacts         func(n int, atLeast bool, blocks string) string
	ContactsNoLevel  func(contacts, cited string) string
	ContactsOfRange  func(contacts, where, level, whose, cited string) string
	Within, Above    string // where the contacts are
	Below, Uncounted string
	OfThePlayer      string // whose level it is
	NotWritten       func(exercise string, byName bool) string

	TimedEffort   func(exercise, length, cited string) string
	Effort        func(exercise, length, cited, reps, source string) string
	PowerRest     func(block, ratio string, jumps bool, low, high float64, source string) string
	PowerRestHere func(handbook, rounds, source, here string) string
	StrengthRest  func(gap, block, strength, assistance, about string) string
	BetweenBlocks func(rest, before, after, least, source string) string
	NoRest        string
	Rest          func(length string) string
	Sides         func(leftReps int, leftTime string, rightReps int, rightTime string) string

	FastAfterSlow     func(fast, slow string) string
	AfterConditioning func(after, conditioning string) string
	NoWarmUp          func(exercise, cited string) string
	ShortWarmUp       func(before, exercise string, jump bool, least, source string) string

	SessionLevel func(session, player string) string
	JumpLevel    func(exercise, from, level string, players bool) string
	DepthJump    func(exercise string, age int) string

	Ended     func(since string, counted bool, cited, window string) string
	JumpAgain func(from, least string) string // from 48 h on
	JumpUntil func(to, most string) string    // after JumpAgain
	JumpDay   func(day int, days, source string) string
}

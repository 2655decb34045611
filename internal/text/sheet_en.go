package text

import "fmt"

// englishSheet is the sheet in English.
var englishSheet = Sheet{
	Columns: [4]string{"Exercise, cues, how", "Dose of a set", "Tick", "Rest"},
	Work:    func(length string) string { return "work " + length }, Rest: func(length string) string { return "rest " + length },
	Transitions: func(length string) string { return "transitions " + length },
	Sets:        func(n int) string { return count(n, "set", "sets") },
	Reps:        func(n int) string { return count(n, "rep", "reps") },
	Rounds:      func(n int) string { return count(n, "round", "rounds") },
	FootContacts: func(n int, counted bool) string {
		return least(n, counted, count(n, "foot contact", "foot contacts"), "at least ", "foot contacts not counted")
	},
	Contacts: func(n int, counted bool) string {
		return least(n, counted, count(n, "contact", "contacts"), "at least ", "contacts not counted")
	},
	RepUnit: func(n int) string {
		if n == 1 {
			return "rep"
		}
		return "reps"
	},
	Long:   func(length string) string { return length + " long" },
	Level:  func(level string) string { return level + " level" },
	WarmUp: "warm-up", CoolDown: "cool-down",
	Trains:       func(list string) string { return "trains " + list },
	Floor:        func(size string) string { return size + " of floor" },
	AboveHead:    func(size string) string { return size + " above the head" },
	ArmsOverhead: "arms overhead", JumpsOverhead: "jumps with arms overhead",

	BetweenRounds: "between rounds",
	BeforeBlock:   func(number string) string { return "before block " + number },
	Then:          func(next string) string { return "then " + next },
	ChangeThen:    func(next string) string { return "change, then " + next },
	StraightTo:    func(next string) string { return "straight to " + next },
	Tally:         func(of int) string { return fmt.Sprintf("tally, of %d", of) },

	EachSide: "each side", EachSideAlternating: "each side, alternating",
	LeftFirst: "left first", RightFirst: "right first", SwapSides: "swap sides each round",
	ToSwitch: func(length string) string { return length + " to switch sides" },
	Tempo:    func(tempo string) string { return "tempo " + tempo },
	ARep:     func(length string) string { return length + " a rep" },
	ARound:   func(contacts string) string { return contacts + " a round" },
	NoHurry:  "no hurry",
	Every:    func(interval string) string { return "every " + interval },
	In:       func(measure, unit string) string { return measure + " in " + unit },
	Practice: "practice",

	Easier: "Easier", Harder: "Harder", Weight: "Weight", Called: "Called", WriteDown: "Write down",
	Tick:          "Tick a box when its set is done.",
	LeftRight:     "L and R: left and right side, in the order to work them.",
	TempoLegend:   "Tempo: seconds lowering-pause-rising, and a last pause if a fourth is given.",
	ContactLegend: "Contact: one foot, or both together, touching the floor.",
	TakenAs:       func(length string) string { return "X in a tempo: as fast as possible, taken as " + length + "." },
	CountsLeadIn:  func(length string) string { return "The total counts " + length + " to get ready." },
	Question:      "How hard was the session as a whole? Mark one number, 30 minutes after the end.",
	Source:        "Session-RPE: Foster et al., J Strength Cond Res 2001;15:109–115",
	Pain:          "Pain: where, 0 to 10", Name: "Name", Date: "Date", Minutes: "Minutes done",
	Notes: "Notes", TakeCare: "Take care", Effort: "Effort", EffortWords: "Words", Marked: "Mark",
	Strip:     "The session as a strip as long as its time: work filled, rest empty, transitions hatched",
	Box:       func(round, side string) string { return spaced("round "+round, side) },
	Block:     func(number, length string) string { return "block " + number + ": " + length },
	Continued: "continued",
	Page:      func(n, of int) string { return fmt.Sprintf("page %d of %d", n, of) },
	Elsewhere: "how to do it, cautions and boxes to tick are on the ordinary sheet",
}

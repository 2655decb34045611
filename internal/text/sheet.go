package text

// Sheet is what stands on paper around a session's own words.
type Sheet struct {
	Columns                     [4]string
	Work, Rest, Transitions     func(length string) string
	Sets, Reps, Rounds          func(n int) string
	FootContacts, Contacts      func(n int, counted bool) string // in full, and where it is clear whose; nothing for a counted 0
	RepUnit                     func(n int) string               // without the number
	Long                        func(length string) string
	Level                       func(level string) string
	WarmUp, CoolDown            string
	Trains                      func(list string) string
	Floor, AboveHead            func(size string) string
	ArmsOverhead, JumpsOverhead string

	BetweenRounds                string
	BeforeBlock                  func(number string) string
	Then, ChangeThen, StraightTo func(next string) string
	Tally                        func(of int) string

	EachSide, EachSideAlternating    string
	LeftFirst, RightFirst, SwapSides string
	ToSwitch, Tempo, ARep            func(what string) string
	ARound                           func(contacts string) string
	NoHurry                          string
	Every                            func(interval string) string
	In                               func(measure, unit string) string
	Practice                         string

	Easier, Harder, Weight, Called, WriteDown    string // labels of notes
	Tick, LeftRight, TempoLegend, ContactLegend  string
	TakenAs, CountsLeadIn                        func(length string) string
	Question, Source, Pain, Name, Date, Minutes  string
	Notes, TakeCare, Effort, EffortWords, Marked string
	Strip                                        string // what the strip shows, to be read aloud
	Box                                          func(round, side string) string
	Block                                        func(number, length string) string
	Continued                                    string // after a block's title
	Page                                         func(n, of int) string
	Elsewhere                                    string // of the sheet for the wall
}

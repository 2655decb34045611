package text

import "fmt"

// Day is what is said of a day of a plan of weeks.
type Day struct {
	Week                                                              func(week, of int) string
	BeforePlan, AfterPlan                                             func(date string) string
	Lighter                                                           string // after the week
	MatchToday, MatchTomorrow                                         string
	At                                                                func(clock string) string
	Today                                                             func(what string) string
	Nothing                                                           string
	Next                                                              func(date, what string) string
	NotDone                                                           func(date, title, why string) string
	Done, Missed, Skipped, LeftOut                                    string // of a session
	OneADay, OwnSession, NoJumps, JumpsMatchToday, JumpsMatchTomorrow string // why a missed one is offered, or is not
	Likewise                                                          string // as the missed one before
	LastJumps, NextJumps                                              func(span, apart string) string
	Apart                                                             func(apart string) string

	IsDone, NextIsOn func(date string) string // why there is no session for today
	NoneLeft         func(first, last string) string
	NoneInWeek       string
}

// englishDay is a day in English.
var englishDay = Day{
	Week:       func(week, of int) string { return fmt.Sprintf("week %d of %d", week, of) },
	BeforePlan: func(date string) string { return "before the plan, which starts on " + date },
	AfterPlan:  func(date string) string { return "after the plan, which ended on " + date },
	Lighter:    "a lighter one", MatchToday: "a match today", MatchTomorrow: "a match tomorrow",
	At:      func(clock string) string { return " at " + clock },
	Today:   func(what string) string { return "today: " + what },
	Nothing: "nothing is planned",
	Next:    func(date, what string) string { return "next: " + date + ", " + what },
	NotDone: func(date, title, why string) string { return "not done: " + date + ", " + title + "; " + why },
	Done:    "done", Missed: "missed", Skipped: "skipped", LeftOut: "left out",
	Likewise:           "likewise",
	OneADay:            "one missed session a day is enough: leave it out",
	OwnSession:         "today has its own session, and a missed one is not added to it: leave it out",
	NoJumps:            "it has no jumps, and today is free: do it, or leave it out",
	JumpsMatchToday:    "it has jumps, and there is a match today: leave it out",
	JumpsMatchTomorrow: "it has jumps, and there is a match tomorrow: leave it out",
	LastJumps: func(span, apart string) string {
		return "the last jumps were " + span + " ago, and " + apart + " should lie between: leave it out"
	},
	NextJumps: func(span, apart string) string {
		return "the next jumps are in " + span + ", and " + apart + " should lie between: leave it out"
	},
	Apart: func(apart string) string {
		return "today is free, and jumps before and after are " + apart + " away or more: do it, or leave it out"
	},
	IsDone: func(date string) string { return "today's is done; --on " + date + " takes it again" },
	NextIsOn: func(date string) string {
		return "nothing is planned today; the next session is on " + date + ", --on " + date + " takes it now"
	},
	NoneLeft: func(first, last string) string {
		return "nothing is planned today; the plan runs from " + first + " to " + last + ", and --on names one of its days"
	},
	NoneInWeek: "the week has no session; name another with --week",
}

// germanDay is a day in German.
var germanDay = Day{
	Week:       func(week, of int) string { return fmt.Sprintf("Woche %d von %d", week, of) },
	BeforePlan: func(date string) string { return "vor dem Plan, der am " + date + " beginnt" },
	AfterPlan:  func(date string) string { return "nach dem Plan, der am " + date + " endete" },
	Lighter:    "eine leichtere", MatchToday: "heute ein Spiel", MatchTomorrow: "morgen ein Spiel",
	At:      func(clock string) string { return " um " + clock },
	Today:   func(what string) string { return "heute: " + what },
	Nothing: "nichts geplant",
	Next:    func(date, what string) string { return "als Nächstes: " + date + ", " + what },
	NotDone: func(date, title, why string) string { return "nicht gemacht: " + date + ", " + title + "; " + why },
	Done:    "fertig", Missed: "verpasst", Skipped: "ausgelassen", LeftOut: "fällt aus",
	Likewise:           "ebenso",
	OneADay:            "eine verpasste Einheit am Tag genügt: lass sie aus",
	OwnSession:         "heute steht eine andere Einheit an, eine verpasste kommt nicht obendrauf: lass sie aus",
	NoJumps:            "sie hat keine Sprünge und heute ist frei: mach sie oder lass sie aus",
	JumpsMatchToday:    "sie hat Sprünge und heute ist ein Spiel: lass sie aus",
	JumpsMatchTomorrow: "sie hat Sprünge und morgen ist ein Spiel: lass sie aus",
	LastJumps: func(span, apart string) string {
		return "die letzten Sprünge sind " + span + " her, " + apart + " sollten dazwischenliegen: lass sie aus"
	},
	NextJumps: func(span, apart string) string {
		return "die nächsten Sprünge kommen in " + span + ", " + apart + " sollten dazwischenliegen: lass sie aus"
	},
	Apart: func(apart string) string {
		return "heute ist frei, und Sprünge davor und danach sind mindestens " + apart + " entfernt: mach sie oder lass sie aus"
	},
	IsDone: func(date string) string {
		return "die heutige ist gemacht; mit --on " + date + " machst du sie noch einmal"
	},
	NextIsOn: func(date string) string {
		return "heute ist nichts geplant; die nächste Einheit ist am " + date + ", mit --on " + date + " machst du sie jetzt"
	},
	NoneLeft: func(first, last string) string {
		return "heute ist nichts geplant; der Plan reicht von " + first + " bis " + last + ", mit --on nennst du einen seiner Tage"
	},
	NoneInWeek: "die Woche hat keine Einheit; nimm mit --week eine andere",
}

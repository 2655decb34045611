package text

import "fmt"

// Handout is what is handed to a player for a week, besides the sheets.
type Handout struct {
	Title          func(plan string, week, of int) string
	From           func(first, last string) string
	NoTraining     string
	LeftOut        func(session string) string
	Match          string
	HowTo          string
	Session        string // stands for a file's name if the week has none
	With           func(file string) string
	Without        string
	Lighter, Hold  string
	Before         string
	Afterwards     string
	AfterwardsText [3]string // paragraphs
	FileName       string    // of how to send it back
	SendBack       func(file string) string
}

// englishHandout is the handout in English.
var englishHandout = Handout{
	Title:      func(plan string, week, of int) string { return fmt.Sprintf("%s, week %d of %d", plan, week, of) },
	From:       func(first, last string) string { return first + " to " + last },
	NoTraining: "no training",
	LeftOut:    func(session string) string { return session + " is left out, and not made up later" },
	Match:      "match",
	HowTo:      "How to do it", Session: "SESSION",
	With:       func(file string) string { return "With the program: coldfloor run " + file },
	Without:    "Without it: play the track of the day, or follow the sheet with a clock. The rest is part of the session: keep it.",
	Lighter:    "This is a lighter week: do less, as fast and as well as ever.",
	Hold:       "This week adds nothing: do the same, better.",
	Before:     "Before you start",
	Afterwards: "Afterwards",
	AfterwardsText: [3]string{
		"Write down the rounds you did, how hard the session was from 0 to 10 half an hour later, and any pain: where, and how much from 0 to 10.",
		"A session you missed is not made up by doubling the next one.",
		"How to send it back is in how-to-send-it-back.txt.",
	},
	FileName: "how-to-send-it-back.txt",
	SendBack: func(file string) string {
		return `How to send back what you did

With the program, everything is logged as you train. Write a copy of it and send
that file to your coach:

    coldfloor log copy -o ` + file + `

It holds the sessions you did, the rests you took, how hard it felt, and what you
said of pain. Nothing is sent by the program itself: you decide who gets it.

Without the program, send your coach the ticked sheets, or a photo of them: the
rounds you did, how hard the session was from 0 to 10, and any pain with its
place and how much, from 0 to 10.
`
	},
}

// germanHandout is the handout in German.
var germanHandout = Handout{
	Title:      func(plan string, week, of int) string { return fmt.Sprintf("%s, Woche %d von %d", plan, week, of) },
	From:       func(first, last string) string { return first + " bis " + last },
	NoTraining: "kein Training",
	LeftOut:    func(session string) string { return session + " fällt aus und wird nicht nachgeholt" },
	Match:      "Spiel",
	HowTo:      "So geht es", Session: "EINHEIT",
	With:       func(file string) string { return "Mit dem Programm: coldfloor run " + file },
	Without:    "Ohne das Programm: Spiel die Tonspur des Tages ab oder folge dem Blatt mit einer Uhr. Die Pause gehört zur Einheit: Halte sie ein.",
	Lighter:    "Das ist eine leichtere Woche: Mach weniger, aber so schnell und so sauber wie immer.",
	Hold:       "Diese Woche kommt nichts dazu: Mach dasselbe, nur besser.",
	Before:     "Bevor du anfängst",
	Afterwards: "Danach",
	AfterwardsText: [3]string{
		"Schreib auf, welche Runden du gemacht hast, eine halbe Stunde später, wie anstrengend die Einheit von 0 bis 10 war, und ob etwas wehtat: wo und wie stark, von 0 bis 10.",
		"Eine verpasste Einheit holst du nicht nach, indem du die nächste doppelt machst.",
		"Wie du es zurückschickst, steht in so-schickst-du-es-zurueck.txt.",
	},
	FileName: "so-schickst-du-es-zurueck.txt",
	SendBack: func(file string) string {
		return `So schickst du zurück, was du gemacht hast

Mit dem Programm wird alles beim Training eingetragen. Schreib eine Kopie davon
und schick diese Datei deiner Trainerin oder deinem Trainer:

    coldfloor log copy -o ` + file + `

Darin stehen die Einheiten, die du gemacht hast, deine Pausen, wie anstrengend es
war und was du über Schmerzen gesagt hast. Das Programm selbst verschickt nichts:
Du entscheidest, wer die Datei bekommt.

Ohne das Programm schick die abgehakten Blätter oder ein Foto davon: die Runden,
die du gemacht hast, wie anstrengend die Einheit von 0 bis 10 war, und alle
Schmerzen mit Stelle und Stärke, von 0 bis 10.
`
	},
}

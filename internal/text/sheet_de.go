package text

import "fmt"

// germanSheet is the sheet in German.
var germanSheet = Sheet{
	Columns: [4]string{"Übung, Hinweise, Ausführung", "Pro Satz", "Haken", "Pause"},
	Work:    func(length string) string { return "Arbeit " + length }, Rest: func(length string) string { return "Pause " + length },
	Transitions: func(length string) string { return "Wechsel " + length },
	Sets:        func(n int) string { return count(n, "Satz", "Sätze") },
	Reps:        func(n int) string { return count(n, "Wiederholung", "Wiederholungen") },
	Rounds:      func(n int) string { return count(n, "Runde", "Runden") },
	FootContacts: func(n int, counted bool) string {
		return least(n, counted, count(n, "Bodenkontakt", "Bodenkontakte"), "mindestens ", "Bodenkontakte nicht gezählt")
	},
	Contacts: func(n int, counted bool) string {
		return least(n, counted, count(n, "Kontakt", "Kontakte"), "mindestens ", "Kontakte nicht gezählt")
	},
	RepUnit: func(int) string { return "Wdh." },
	Long:    func(length string) string { return "Dauer " + length },
	Level:   func(level string) string { return "für " + level },
	WarmUp:  "Aufwärmen", CoolDown: "Abwärmen",
	Trains:       func(list string) string { return "trainiert " + list },
	Floor:        func(size string) string { return comma(size) + " Boden" },
	AboveHead:    func(size string) string { return comma(size) + " über dem Kopf" },
	ArmsOverhead: "Arme über dem Kopf", JumpsOverhead: "Sprünge mit den Armen über dem Kopf",

	BetweenRounds: "zwischen den Runden",
	BeforeBlock:   func(number string) string { return "vor Block " + number },
	Then:          func(next string) string { return "dann " + next },
	ChangeThen:    func(next string) string { return "Wechsel, dann " + next },
	StraightTo:    func(next string) string { return "direkt zu " + next },
	Tally:         func(of int) string { return fmt.Sprintf("Strichliste, von %d", of) },

	EachSide: "je Seite", EachSideAlternating: "je Seite, im Wechsel",
	LeftFirst: "links zuerst", RightFirst: "rechts zuerst", SwapSides: "jede Runde die andere Seite zuerst",
	ToSwitch: func(length string) string { return comma(length) + " zum Seitenwechsel" },
	Tempo:    func(tempo string) string { return "Tempo " + tempo },
	ARep:     func(length string) string { return comma(length) + " je Wdh." },
	ARound:   func(contacts string) string { return contacts + " je Runde" },
	NoHurry:  "ohne Eile",
	Every:    func(interval string) string { return "alle " + comma(interval) },
	In:       func(measure, unit string) string { return measure + " in " + unit },
	Practice: "Probe",

	Easier: "Leichter", Harder: "Schwerer", Weight: "Gewicht", Called: "Angesagt", WriteDown: "Notieren",
	Tick:          "Mach einen Haken, wenn der Satz fertig ist.",
	LeftRight:     "L und R: linke und rechte Seite, in der Reihenfolge, in der sie drankommen.",
	TempoLegend:   "Tempo: Sekunden ab-halten-auf, mit einer vierten Zahl auch die Pause danach.",
	ContactLegend: "Kontakt: Ein Fuß berührt den Boden, oder beide zugleich.",
	TakenAs: func(length string) string {
		return "X im Tempo: so schnell wie möglich, gerechnet als " + comma(length) + "."
	},
	CountsLeadIn: func(length string) string { return "Die Gesamtzeit zählt " + length + " zum Bereitmachen mit." },
	Question:     "Wie anstrengend war die Einheit insgesamt? Kreuze 30 Minuten nach dem Ende eine Zahl an.",
	Source:       "Session-RPE: Foster et al., J Strength Cond Res 2001;15:109–115",
	Pain:         "Schmerzen: wo, 0 bis 10", Name: "Name", Date: "Datum", Minutes: "Minuten",
	Notes: "Notizen", TakeCare: "Pass auf dich auf", Effort: "Anstrengung", EffortWords: "In Worten", Marked: "Kreuz",
	Strip:     "Die Einheit als Streifen, so lang wie ihre Zeit: Arbeit gefüllt, Pause leer, Wechsel schraffiert",
	Box:       func(round, side string) string { return spaced("Runde "+round, side) },
	Block:     func(number, length string) string { return "Block " + number + ": " + length },
	Continued: "Fortsetzung",
	Page:      func(n, of int) string { return fmt.Sprintf("Seite %d von %d", n, of) },
	Elsewhere: "Ausführung, Hinweise und Kästchen stehen auf dem kleinen Blatt",
}

package text

import "fmt"

// Briefing is what a player is told before a session, if there is something to
// be told. The severities and rules are those of the check.
type Briefing struct {
	Title, StopTitle          func(session string) string
	WithoutJumps              string // the other choice
	Pain                      func(date string) string
	PainLevel                 func(level int) string
	PainStop, PainAsk         string // after Pain
	Break                     func(days, percent int) string
	BreakContacts             func(enough, of int, counted bool) string // counted: they are all of them
	BreakAfter                func(second, third, fourth int) string
	MatchToday, MatchTomorrow string
	Error, Warning            string
	More                      func(n int) string
}

// englishBriefing is the briefing in English.
var englishBriefing = Briefing{
	Title:        func(session string) string { return "Before you start: " + session },
	StopTitle:    func(session string) string { return "Stop first: " + session },
	WithoutJumps: "choose a session without jumps",
	Pain:         func(date string) string { return "Pain was noted last time, " + date },
	PainLevel:    func(level int) string { return fmt.Sprintf(", %d of 10", level) },
	PainStop:     "Pain that is new in a joint, or this strong: stop, and see a licensed practitioner before you train",
	PainAsk:      "If it is still there or getting worse, leave the jumps out and ask a licensed practitioner",
	Break: func(days, percent int) string {
		return fmt.Sprintf("%d days since your last session. In the first week back %d %% of the usual is enough", days, percent)
	},
	BreakContacts: func(enough, of int, counted bool) string {
		if !counted {
			return fmt.Sprintf(": of the %d contacts counted here, %d; there are jumps beside them", of, enough)
		}
		return fmt.Sprintf(": of the %d contacts here, %d", of, enough)
	},
	BreakAfter: func(second, third, fourth int) string {
		return fmt.Sprintf("; %d, %d and %d %% in the weeks after (Caterisano et al., Strength Cond J 2019;41(3):1–23, second-hand; for contacts an analogy).", second, third, fourth)
	},
	MatchToday:    "There is a match today: jumps before it leave less for it (common practice, no source).",
	MatchTomorrow: "There is a match tomorrow: jumps today leave less for it (common practice, no source).",
	Error:         "Error", Warning: "Warning",
	More: func(n int) string { return count(n, "finding", "findings") + " more; coldfloor check lists them." },
}

// germanBriefing is the briefing in German.
var germanBriefing = Briefing{
	Title:        func(session string) string { return "Bevor du anfängst: " + session },
	StopTitle:    func(session string) string { return "Halt: " + session },
	WithoutJumps: "eine Einheit ohne Sprünge wählen",
	Pain:         func(date string) string { return "Beim letzten Mal, " + date + ", waren Schmerzen notiert" },
	PainLevel:    func(level int) string { return fmt.Sprintf(", %d von 10", level) },
	PainStop:     "Schmerzen, die in einem Gelenk neu oder so stark sind: Hör auf und lass sie ärztlich oder physiotherapeutisch abklären, bevor du trainierst",
	PainAsk:      "Sind sie noch da oder nehmen sie zu, lass die Sprünge weg und frag ärztlich oder physiotherapeutisch nach",
	Break: func(days, percent int) string {
		return fmt.Sprintf("%d Tage seit deiner letzten Einheit. In der ersten Woche danach genügen %d %% des Üblichen", days, percent)
	},
	BreakContacts: func(enough, of int, counted bool) string {
		if !counted {
			return fmt.Sprintf(": von den %d hier gezählten Kontakten also %d; dazu kommen ungezählte Sprünge", of, enough)
		}
		return fmt.Sprintf(": von den %d Kontakten hier also %d", of, enough)
	},
	BreakAfter: func(second, third, fourth int) string {
		return fmt.Sprintf("; %d, %d und %d %% in den Wochen darauf (Caterisano et al., Strength Cond J 2019;41(3):1–23, aus zweiter Hand; für Kontakte sinngemäß).", second, third, fourth)
	},
	MatchToday:    "Heute ist ein Spiel: Sprünge davor kosten dort Kraft (übliche Praxis, ohne Quelle).",
	MatchTomorrow: "Morgen ist ein Spiel: Sprünge heute kosten dort Kraft (übliche Praxis, ohne Quelle).",
	Error:         "Fehler", Warning: "Warnung",
	More: func(n int) string {
		return count(n, "weiterer Befund", "weitere Befunde") + "; coldfloor check zeigt alle."
	},
}

package text

import (
	"fmt"
	"strings"
)

// germanSources are the words in which sources say how sure they are.
var germanSources = strings.NewReplacer(
	"from memory", "aus dem Gedächtnis",
	"second-hand", "aus zweiter Hand",
	"common practice, no source", "übliche Praxis, ohne Quelle",
	"its least after ", "das Minimum nach ",
	"our own, no source", "unsere eigene, ohne Quelle",
	"(CSCCa and NSCA)", "(CSCCa und NSCA)",
)

// germanFindings is what a check finds, in German.
var germanFindings = Findings{
	Quote: func(name string) string { return "„" + name + "“" }, OwnLimit: "deine eigene Grenze",
	Source: germanSources.Replace, Estimated: func(string) string { return " (geschätzt)" },
	AboveCeiling: func(exercise, top, over, ceiling, estimated string) string {
		return exercise + " reicht bis " + comma(top) + ", das sind " + comma(over) + " mehr als die Decke mit " + comma(ceiling) + " zulässt" + estimated
	},
	Floor: func(exercise, need, room string) string {
		return exercise + " braucht " + comma(need) + " Boden, aber der Raum hat " + comma(room)
	},
	Travel: func(exercise, one, along, estimated string) string {
		return "eine Wiederholung von " + exercise + " geht " + comma(one) + " weit, der Boden ist " + comma(along) + " lang" + estimated
	},
	Contacts: func(n int, atLeast bool, blocks string) string {
		said := count(n, "Bodenkontakt", "Bodenkontakte") + " (" + blocks + ")"
		if atLeast {
			return "mindestens " + said
		}
		return said
	},
	ContactsNoLevel: func(contacts, cited string) string {
		return contacts + "; ein Niveau ist nicht angegeben, für Könner gelten je Einheit " + cited
	},
	ContactsOfRange: func(contacts, where, level, whose, cited string) string {
		return contacts + " " + where + " für das Niveau " + level + whose + " je Einheit gilt: " + cited
	},
	Within: "liegen in dem, was", Above: "sind mehr, als", Below: "sind weniger, als", Uncounted: "und dazu ungezählte Sprünge, gemessen an dem, was", OfThePlayer: " (deinem)",
	NotWritten: func(exercise string, byName bool) string {
		why := "der Höhe nach"
		if byName {
			why = "dem Namen nach"
		}
		return exercise + " ist " + why + " ein Sprung, aber seine Bodenkontakte stehen nicht in der Einheit und werden nicht gezählt"
	},
	TimedEffort: func(exercise, length, cited string) string {
		return "eine Belastung bei " + exercise + " dauert " + comma(length) + ", länger, als volle Schnellkraft hält: " + cited + "; kürze sie oder nimm sie als Ausdauer"
	},
	Effort: func(exercise, length, cited, reps, source string) string {
		return "eine Belastung bei " + exercise + " dauert " + comma(length) + ", länger, als volle Schnellkraft hält: " + cited + ", und länger als die üblichen " + reps + " Wdh. (" + source + ")"
	},
	PowerRest: func(block, ratio string, jumps bool, low, high float64, source string) string {
		work := "volle Schnellkraft"
		if jumps {
			work = "Sprünge"
		}
		return fmt.Sprintf("Arbeit zu Pause in %s ist %s; das Handbuch nennt für %s %s bis %s (%s)", block, comma(ratio), work,
			comma(fmt.Sprintf("1:%g", low)), comma(fmt.Sprintf("1:%g", high)), source)
	},
	PowerRestHere: func(handbook, rounds, source, here string) string {
		return handbook + ", üblich sind " + rounds + " zwischen den Runden (" + source + "), hier sind es " + here
	},
	StrengthRest: func(gap, block, strength, assistance, about string) string {
		return gap + " zwischen zwei Sätzen einer Übung in " + block + "; für Kraft gelten " + strength +
			", für Hilfsübungen " + assistance + ", üblich sind etwa " + about
	},
	BetweenBlocks: func(rest, before, after, least, source string) string {
		return rest + " von " + before + " zu " + after + ", weniger als die " + least + " zwischen Runden (" + source + ")"
	},
	NoRest: "keine Pause", Rest: func(length string) string { return length + " Pause" },
	Sides: func(leftReps int, leftTime string, rightReps int, rightTime string) string {
		return fmt.Sprintf("links sind es %d Wdh. und %s nach Zeit, rechts %d Wdh. und %s: mach auf beiden Seiten gleich viel",
			leftReps, leftTime, rightReps, rightTime)
	},
	FastAfterSlow: func(fast, slow string) string {
		return fast + " kommt nach der langsamen Kraftübung " + slow + "; Schnelles gehört an den Anfang, solange die Beine frisch sind (übliche Praxis, ohne Quelle)"
	},
	AfterConditioning: func(after, conditioning string) string {
		return after + " kommt nach der Ausdauer in " + conditioning + "; Ausdauer gehört an den Schluss (übliche Praxis, ohne Quelle)"
	},
	NoWarmUp: func(exercise, cited string) string {
		return exercise + " kommt ohne Aufwärmen davor (kein Block mit part: warm-up); wärm dich zuerst auf, " + cited
	},
	ShortWarmUp: func(before, exercise string, jump bool, least, source string) string {
		what := "der ersten schnellen Übung"
		if jump {
			what = "dem ersten Sprung"
		}
		return "vor " + what + ", " + exercise + ", kommen nur " + before + " Aufwärmen; mindestens sollten es " + least + " sein (" + source + ")"
	},
	SessionLevel: func(session, player string) string {
		return "die Einheit ist für das Niveau " + session + " geschrieben, aber in deinen Einstellungen steht " + player
	},
	JumpLevel: func(exercise, from, level string, players bool) string {
		whose := "die Einheit ist geschrieben für"
		if players {
			whose = "in deinen Einstellungen steht"
		}
		return exercise + " ist ein Sprung für das Niveau " + from + ", aber " + whose + " " + level + " (Reihenfolge der Intensität nach NSCA Essentials, aus dem Gedächtnis)"
	},
	DepthJump: func(exercise string, age int) string {
		return fmt.Sprintf("%s ist ein Tiefsprung, und du bist höchstens %d: keine vor der Pubertät (NSCA Essentials, aus dem Gedächtnis)", exercise, age)
	},
	Ended: func(since string, counted bool, cited, window string) string {
		what := "die letzte Einheit mit Bodenkontakten"
		if !counted {
			what = "die letzte Einheit mit Sprüngen, die nicht gezählt sind,"
		}
		return what + " ist " + since + " her; dazwischen liegen sollten " + cited + ", das ist eine Vorsicht und keine bewiesene Grenze: " + window
	},
	JumpAgain: func(from, least string) string { return "wieder springen ab " + from + " (" + least + ")" },
	JumpUntil: func(to, most string) string { return " bis " + to + " (" + most + ")" },
	JumpDay: func(day int, days, source string) string {
		return fmt.Sprintf("das wäre der %d. Tag mit Sprüngen in sieben Tagen; üblich sind %s Tage in der Woche (%s)", day, days, source)
	},
}

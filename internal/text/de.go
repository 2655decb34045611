package text

import (
	"fmt"
	"strings"
	"time"

	"coldfloor/internal/units"
)

// German is shown with the names of the built-in sessions in German too.
var German = Language{
	Code: "de",
	Date: germanDate, names: german,
	Step: Step{
		LeftSide: "linke Seite", RightSide: "rechte Seite", Alternating: "Seiten im Wechsel", Left: "links", Right: "rechts",
		OneRep: "1 Wdh.", Reps: func(n int) string { return count(n, "Wdh.", "Wdh.") }, Seconds: "Sek.",
		Round:      func(n, of int) string { return fmt.Sprintf("Runde %d von %d", n, of) },
		Try:        func(n int) string { return fmt.Sprintf("Versuch %d", n) },
		Practice:   func(n int) string { return fmt.Sprintf("Probe %d", n) },
		DoneInPart: "teilweise", Skipped: "ausgelassen", Done: "fertig",
		Away:    func(span string) string { return "der Rechner stand " + span + " still" },
		SetBack: "die Uhr des Rechners wurde zurückgestellt", ThenPaused: "; angehalten, wo du warst",
		ThenAlone: "; es geht weiter, niemand ist an den Tasten",
		Logged:    "eingetragen; zeigen: coldfloor log show last, ändern: coldfloor log rate last",
		Empty:     "es wurde nichts gemacht, deshalb zählt die Einheit nicht; coldfloor log nennt sie",
		Kept:      "unterbrochen; beim nächsten Start kannst du hier weitermachen",
	},
	Screen: Screen{
		Ready: "BEREIT MACHEN", Work: "LOS", Rest: "PAUSE", Switch: "SEITENWECHSEL", Change: "NÄCHSTE ÜBUNG", RestEnds: "GLEICH LOS",
		Paused: "ANGEHALTEN", OwnPace: "DEIN TEMPO", Done: "FERTIG",
		KeyWhenDone: "DANN TASTE", About: "etwa", Next: "als Nächstes", Resume: "p: weiter",
		GoOn: "weiter mit jeder Taste", ThenDone: "dann fertig", HelpBack: "? schließt die Liste",
		HelpMore: func(page, of int) string { return fmt.Sprintf("? mehr Tasten (%d/%d)", page, of) },
		NoTime:   "eine Zeit in s, etwa 4,52", NoCount: "eine ganze Zahl", NoLength: "eine Länge in cm, etwa 231",
		Measures: map[string]string{"distance": "Weite", "height": "Höhe", "count": "Anzahl", "time": "Zeit"},
		NoResult: "keins", Ask: func(what, none string) string { return what + " oder " + none },
		NoCell: func(from string) string {
			return "ob das aus " + from + " lesbar ist, sagt erst cell_height in den Einstellungen"
		},
		NoRoom: func(from string) string { return "das Fenster ist zu klein, um es aus " + from + " zu lesen" },
		TooSmall: func(from string) string {
			return "zu klein, um es aus " + from + " zu lesen: Fenster oder Schrift größer machen"
		},
		JustLegible: func(from string) string { return "aus " + from + " gerade noch lesbar; größer wäre leichter" },
		EasilyRead:  func(from string) string { return "aus " + from + " gut lesbar" },
		KeepResult:  "Enter übernimmt, Esc lässt es weg", OneMore: "noch einmal", Results: "Ergebnisse", LeftOut: "weggelassen",
		MoreResults: func(n int) string { return fmt.Sprintf("noch %d", n) },
		Muted:       "stumm", BellOnly: "nur Glocke", SoundOff: "Ton aus", SoundOn: "Ton an", BellVolume: "Glockenlautstärke bestimmt das Terminal",
		More: "15 s länger", NoMore: "dieser Satz endet mit einer Taste",
		Easier: "leichtere Variante", AsGiven: "wie vorgegeben", NoEasier: "hierfür gibt es keine leichtere Variante",
		Stop: [3]string{"Aufhören?", "q: aufhören, eintragen", "andere Taste: weiter"}, StopUnlogged: "q: aufhören",
		Down: "ab", Hold: "halten", Up: "auf",
		Of:       func(n int) string { return fmt.Sprintf("von %d", n) },
		Target:   func(worked, target string) string { return worked + " von " + target },
		ToGo:     func(left string) string { return "noch " + left },
		Then:     func(what string) string { return "dann " + what },
		ThenRest: func(length string) string { return "dann Pause " + length },
		Offer:    func(name string) string { return "e leichter: " + name },
		Volume:   func(percent int) string { return fmt.Sprintf("Lautstärke %d %%", percent) },
	},
	Keys: Keys{
		Finish: "Enter", Enter: "Enter", Escape: "Esc",
		EndSet: "Satz beenden", Pause: "anhalten", Resume: "weiter", More: "15 s länger", Back: "zurück", Repeat: "Satz wiederholen", Skip: "auslassen",
		Easier: "leichter", Mute: "stumm", Louder: "lauter", Softer: "leiser", Stop: "aufhören", Help: "Tasten",
		StopToo: "auch Esc oder Strg+C: aufhören", AnyOther: "andere Taste oder Klick: Satz beenden",
		Up: "hoch", Down: "runter", Choose: "wählen", Leave: "verlassen", NextField: "weiter", Less: "weniger", Greater: "mehr", Change: "ändern", Save: "sichern",
	},
	Form: Form{
		Effort: "Anstrengung", Pain: "Schmerzen", Where: "wo", Note: "Notiz", Save: "Sichern", Yes: "ja", No: "nein",
		NotAnswered: "keine Antwort", Optional: "alles ist freiwillig",
		NoteHint: "was dir wichtig ist", RoundsHint: "fertige Runden, wie gezählt; stimmt das nicht, tipp die richtige Zahl",
		PainHint: "Schmerzen, dabei oder jetzt? j oder n", WhereHint: "wo es wehtut, etwa linkes Knie",
		EffortHint: func(after string) string {
			return "wie schwer insgesamt? am besten " + after + ", mit coldfloor log rate"
		},
		AskAfter:  "30 min nach dem Ende",
		Rounds:    func(done, of int) string { return fmt.Sprintf("%d von ", done) + count(of, "Runde", "Runden") },
		MoreAbove: func(n int) string { return fmt.Sprintf("%d weitere darüber", n) },
		MoreBelow: func(n int) string { return fmt.Sprintf("%d weitere darunter", n) },
		RPE:       [11]string{"Ruhe", "sehr, sehr leicht", "leicht", "mäßig", "etwas schwer", "schwer", "", "sehr schwer", "", "", "maximal"},
		GoOn:      "weiter", NotLogged: "Noch nicht eingetragen", Kept: "Deine Angaben bleiben erhalten, das Sichern wird noch einmal versucht.",
		TryAgain: "noch einmal versuchen", Elsewhere: "an einem anderen Ort sichern", BackToForm: "zurück zum Formular", LeaveWithout: "ohne sie verlassen",
		WrittenTo: func(file string) string { return "gesichert in " + file + "; leg die Datei neben dein Journal" },
	},
	Choose: Choose{
		Title: "Wähle eine Einheit", Session: "Einheit", Length: "Dauer", Blocks: "Blöcke", Contacts: "Kontakte", LastDone: "zuletzt",
		NotYet: "noch nie", Today: "heute", Yesterday: "gestern", DaysAgo: func(n int) string { return "vor " + count(n, "Tag", "Tagen") },
		Level:      func(level string) string { return "Niveau: " + level },
		Levels:     map[string]string{"beginner": "Einsteiger", "intermediate": "Fortgeschrittene", "advanced": "Könner"},
		CannotRead: func(files string) string { return "nicht lesbar: " + files + "; coldfloor check DATEI sagt, warum" },
		Week:       func(n int) string { return fmt.Sprintf(", Woche %d", n) },
		StartToday: "heutige Einheit beginnen", AllSessions: "alle Einheiten", Leave: "verlassen",
		LeaveOut: func(date string) string { return "die vom " + date + " auslassen" },
		DoMissed: func(date string) string { return "die vom " + date + " nachholen" },
		DoNow:    func(date string) string { return "die vom " + date + " jetzt machen" },
	},
	Flow: Flow{
		Leave: "verlassen", GoOn: "weiter", Start: "beginnen", OrEnter: " oder Enter", Read: "gelesen, weiter", DidNotWork: "Das ging nicht",
		NoLog: "Das Journal lässt sich nicht schreiben", NoLogText: "Was du machst, würde nicht festgehalten. Ohne Journal beginnen?", RunWithout: "ohne Journal beginnen", NoLogFlag: "mit --no-log geht es ohne Journal",
		Unfinished: "Eine Einheit wurde nicht beendet", UnfinishedRehearsal: "Ein Probelauf wurde nicht beendet",
		Begun: func(title, when string, done, of int) string {
			return fmt.Sprintf("%s, begonnen %s: %d von %d Sätzen gemacht.", title, when, done, of)
		},
		LogAsIs: "so eintragen, wie sie ist", GoOnFrom: "dort weitermachen", Later: "auf später verschieben",
		OldRun:     "Sie ist mehr als einen Tag alt: trag sie so ein und beginne eine neue.",
		OfferHint:  "coldfloor run in einem Terminal bietet an, weiterzumachen oder sie so einzutragen",
		CannotGoOn: func(why string) string { return "Sie lässt sich nicht fortsetzen: " + why + "." },
		IsRehearsal: func(speed float64) string {
			return fmt.Sprintf("Sie ist ein Probelauf mit %gfacher Geschwindigkeit; mit --speed %g geht sie weiter.", speed, speed)
		},
		IsReal:       "Sie ist eine echte Einheit und dies ist ein Probelauf; ohne --speed geht sie weiter.",
		FirstSession: "Vor der ersten Einheit",
		TodayAt:      func(clock string) string { return "heute um " + clock },
		YesterdayAt:  func(clock string) string { return "gestern um " + clock },
		DateAt:       func(date, clock string) string { return date + " um " + clock },
	},
	Sounds: germanSounds,
	Plain: Plain{
		Hint:       "Tipp:",
		NoSession:  func(names string) string { return "keine Einheit genannt; es gibt " + names },
		Wrong:      func(answer, must string) string { return "„" + answer + "“ geht nicht: " + must },
		EffortMust: "eine Zahl von 0 bis 10", RoundsMust: func(rounds string) string {
			return "für jeden Block eine Zahl, nicht mehr als " + rounds
		},
		SwitchSides: "Seite wechseln", NextExercise: "nächste Übung", Rest: "Pause", Work: "los", Ready: "bereit machen", Next: "es folgt",
		ToGo:       func(left string) string { return "noch " + left },
		EasierKey:  func(name string) string { return "e für " + name },
		SetSkipped: "Satz ausgelassen", InPartReps: func(done, of int) string { return fmt.Sprintf("Satz teilweise, %d von %d Wiederholungen", done, of) },
		InPartTime: func(taken string) string { return "Satz teilweise, " + taken },
		EndsByKey:  "los, Enter beendet den Satz", SessionToGo: func(left string) string { return "Einheit noch " + left },
		TenSeconds: "zehn Sekunden",
		WaitEnter:  "warten, Enter, wenn der Satz fertig ist", CountIn: "bereit machen", More: "länger", Variant: "Variante",
		Pause: "angehalten", PauseAway: "angehalten, der Rechner stand still", ToResume: "p: weiter",
		Stopped: "Ende, abgebrochen", NothingDone: "Ende, nichts gemacht", Finished: "Ende, fertig", Notice: "Hinweis:",
		NotRated: func(run, when string) string {
			return run + ", ist noch nicht bewertet. Am besten bewertest du die Anstrengung " + when + "."
		},
		RateHint: "Tipp: mit coldfloor log rate RUN hältst du fest, wie schwer es war, und Schmerzen; RUN steht in coldfloor log", RateLast: "mit coldfloor log rate last hältst du fest, wie schwer es war, und Schmerzen",
		Rehearsal: "als Probelauf eingetragen; er zählt nicht", TryAgain: "Enter: noch einmal versuchen; w: an einem anderen Ort sichern; q: ohne sie verlassen? ",
		LeaveAsIs: "Enter allein lässt eine Antwort, wie sie ist.", AskEffort: "Wie schwer war die Einheit insgesamt, 0 bis 10", AskPain: "Schmerzen: wo, oder keine", AskNote: "Notiz",
		AskRounds: func(rounds, such string) string {
			return "Fertige Runden, für jeden Block eine Zahl, etwa " + such + " (" + rounds + ")"
		},
		Help: "Enter beendet den Satz; p hält an und macht weiter, + gibt 15 s mehr, b geht zurück, r wiederholt den Satz, s lässt aus, " +
			"e nimmt die leichtere Variante, t sagt, was noch kommt, m schaltet stumm, zweimal q hört auf, ? sagt das noch einmal",
		KeyboardGone: "die Tastatur ist weg; die Einheit läuft in ihrem Tempo weiter", StopTwiceUnlogged: "noch einmal q hört auf, ohne einzutragen; jede andere Eingabe macht weiter", StopTwice: "noch einmal q hört auf und trägt ein, was gemacht ist; jede andere Eingabe macht weiter",
		EnterEnds: "dieser Satz endet mit Enter, nicht mit der Uhr", EnterStarts: "Enter beginnt, ? nennt die Tasten, q verlässt",
	},
	Care: Care{
		Prepare:    "Wärm dich zuerst auf und mach den Boden und den Raum über deinem Kopf frei.",
		ShoesFloor: "Trag Schuhe, die greifen, auf trockenem, leicht nachgebendem Boden; spring nicht in Socken oder auf losen Matten.",
		Stop: "Hör auf und hol Hilfe bei Schmerzen in Brust, Hals, Kiefer oder Arm; Schwindel oder Ohnmacht; Atemnot, bei der du nicht mehr sprechen kannst; " +
			"kaltem Schweiß; unregelmäßigem Herzschlag; neuen Gelenkschmerzen; Sehstörungen.",
		NotAdvice: "Das ist kein ärztlicher Rat: Frag bei Krankheit, Verletzung oder Zweifel zuerst ärztlich oder physiotherapeutisch nach.",
		Under18:   "Wer unter 18 ist, trainiert mit dem Einverständnis einer qualifizierten erwachsenen Person.",
		PainNoted: "Schmerzen notiert", PainAdvice: "Trainiere nicht darüber hinweg: Hör auf und lass Schmerzen, die neu oder stechend sind oder nicht vergehen, ärztlich oder physiotherapeutisch abklären.",
	},
	Sheet: germanSheet, Handout: germanHandout, Day: germanDay, Briefing: germanBriefing, Trouble: germanTrouble, Calendar: germanCalendar, Findings: germanFindings,
}

// germanDate writes Mo 7. Dez.
func germanDate(d units.Date) string {
	t := d.In(time.UTC, 0)
	weekdays := [...]string{"So", "Mo", "Di", "Mi", "Do", "Fr", "Sa"}
	months := [...]string{"Jan", "Feb", "März", "Apr", "Mai", "Juni", "Juli", "Aug", "Sept", "Okt", "Nov", "Dez"}
	return fmt.Sprintf("%s %d. %s", weekdays[t.Weekday()], t.Day(), months[t.Month()-1])
}

// comma returns a length with a decimal comma, if it has decimals.
func comma(length string) string { return strings.ReplaceAll(length, ".", ",") }

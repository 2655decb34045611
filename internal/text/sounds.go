package text

import "coldfloor/internal/safetext"

// Sounds says what each cue is called and what it tells the player, and how
// directions are called.
type Sounds struct {
	GetReady, WorkStarts, Lowering, Rising, Rep, ChangeSide, ChangeExercise, RestStarts, TenLeft, Done Meant

	CallTones func(tones int) string // that call a direction
}

// Meant is what a cue is called and what it tells.
type Meant struct{ Name, Tells string }

// Direction returns a direction that is called as it is shown.
func (l *Language) Direction(name string) string { return safetext.Clean(l.Name(name)) }

// englishSounds are those of English.
var englishSounds = Sounds{
	GetReady:       Meant{"get ready", "get ready: three of them count down to the start"},
	WorkStarts:     Meant{"work starts", "work starts now"},
	Lowering:       Meant{"lowering", "tempo: lower, a soft low click"},
	Rising:         Meant{"rising", "tempo: rise, a soft high click"},
	Rep:            Meant{"rep", "the next rep, a soft click"},
	ChangeSide:     Meant{"switch sides", "switch to the other side"},
	ChangeExercise: Meant{"next exercise", "change to the next exercise"},
	RestStarts:     Meant{"rest starts", "the set is over, rest"},
	TenLeft:        Meant{"ten seconds left", "ten seconds of rest left"},
	Done:           Meant{"done", "the session is over"},
	CallTones: func(tones int) string {
		return [...]string{"called by one tone", "called by two tones", "called by three tones"}[tones-1]
	},
}

// germanSounds are those of German.
var germanSounds = Sounds{
	GetReady:       Meant{"bereit machen", "bereit machen: drei davon zählen zum Start herunter"},
	WorkStarts:     Meant{"los", "jetzt geht es los"},
	Lowering:       Meant{"senken", "Tempo: senken, ein leiser tiefer Klick"},
	Rising:         Meant{"heben", "Tempo: heben, ein leiser hoher Klick"},
	Rep:            Meant{"Wiederholung", "die nächste Wiederholung, ein leiser Klick"},
	ChangeSide:     Meant{"Seite wechseln", "auf die andere Seite wechseln"},
	ChangeExercise: Meant{"nächste Übung", "zur nächsten Übung wechseln"},
	RestStarts:     Meant{"Pause", "der Satz ist vorbei, Pause"},
	TenLeft:        Meant{"zehn Sekunden", "noch zehn Sekunden Pause"},
	Done:           Meant{"fertig", "die Einheit ist vorbei"},
	CallTones: func(tones int) string {
		return [...]string{"gerufen mit einem Ton", "gerufen mit zwei Tönen", "gerufen mit drei Tönen"}[tones-1]
	},
}

package text

import "fmt"

// Trouble is what can go wrong with a run and its log, in sentences without
// their full stop.
type Trouble struct {
	NoDevice, DeviceLost, OverSSH string // why there is no sound
	BellInstead                   func(why string) string
	Speech, NoSpeech              func(what string) string // what the speech program says; which programs there could be
	Silent                        func(program string) string

	KeptInMemory     func(why string) string // what cannot be logged just now
	CannotWrite      func(file, why string) string
	LinesLost        func(n int, why string) string
	Full, Denied     string // why a file cannot be written
	ReadOnly, Absent string
	NoFolder         string // a file stands in its place
	Locked           string
	NotRegular       string
	NotAJournal      string

	StillRunning   string // why a run cannot be taken up, or cannot be logged
	NothingLeft    string
	PrescribedLost string
	CannotParse    func(why string) string
	Changed        string
	HasEnded       string
	NotLogged      string
	NotKept        string // a day cannot be left out without a log

	Other func(why string) string // what there are no words for: the system's own
}

// englishTrouble is what goes wrong, in English.
var englishTrouble = Trouble{
	NoDevice: "no sound device", DeviceLost: "the sound device went away", OverSSH: "no sound over SSH",
	BellInstead: func(why string) string { return why + ": terminal bell instead" },
	Speech:      func(what string) string { return "speech: " + what },
	Silent:      func(program string) string { return program + " wrote no sound" },
	NoSpeech:    func(what string) string { return "no speech program found: install " + what + ", or leave --voice out" },
	KeptInMemory: func(why string) string {
		return "the log cannot be written just now and is kept in memory: " + why
	},
	CannotWrite: func(file, why string) string { return "cannot write " + file + ": " + why },
	LinesLost: func(n int, why string) string {
		return count(n, "line", "lines") + " of the journal could not be written: " + why
	},
	Full: "no room is left on the disk; free some", Denied: "permission denied; make its folder writable, or name another file with --journal",
	ReadOnly: "it is on a read-only disk; name another file with --journal", Absent: "no such file or folder", NoFolder: "a file stands where its folder should be; name another file with --journal",
	Locked: "another process holds its lock", NotRegular: "it is a folder or a device, not a file; name another with --journal", NotAJournal: "it is not a journal, and nothing was written to it; name another file with --journal",
	StillRunning: "it is still running in another window; end it there first", NothingLeft: "nothing of it is left to do",
	PrescribedLost: "the journal has lost what was prescribed in it",
	CannotParse:    func(why string) string { return "the session in it cannot be read: " + why },
	Changed:        "it was resumed or ended in the meantime; start again to see how it stands",
	HasEnded:       "it has ended already",
	NotLogged:      "this session is not logged",
	NotKept:        "without a log nothing can be left out for good",
	Other:          func(why string) string { return why },
}

// germanTrouble is what goes wrong, in German.
var germanTrouble = Trouble{
	NoDevice: "kein Tongerät", DeviceLost: "das Tongerät ist weg", OverSSH: "kein Ton über SSH",
	BellInstead: func(why string) string { return why + ", dafür die Terminalglocke" },
	Speech:      func(what string) string { return "die Sprachausgabe geht nicht: " + what },
	Silent:      func(program string) string { return program + " liefert keinen Ton" },
	NoSpeech: func(what string) string {
		return "kein Sprachprogramm gefunden: installiere " + what + " oder lass --voice weg"
	},
	KeptInMemory: func(why string) string {
		return "das Journal lässt sich gerade nicht schreiben, alles bleibt im Speicher: " + why
	},
	CannotWrite: func(file, why string) string { return file + " lässt sich nicht schreiben: " + why },
	LinesLost: func(n int, why string) string {
		return count(n, "Zeile", "Zeilen") + " des Journals nicht geschrieben: " + why
	},
	Full: "auf dem Datenträger ist kein Platz mehr; schaff welchen", Denied: "die Berechtigung fehlt; mach den Ordner beschreibbar oder nimm mit --journal eine andere Datei",
	ReadOnly: "der Datenträger lässt sich nur lesen; nimm mit --journal eine andere Datei", Absent: "Datei oder Ordner fehlt", NoFolder: "wo der Ordner sein müsste, ist eine Datei; nimm mit --journal eine andere",
	Locked: "ein anderes Programm hält die Sperre", NotRegular: "das ist ein Ordner oder ein Gerät, keine Datei; nimm mit --journal eine andere", NotAJournal: "das ist kein Journal, und es wurde nichts hineingeschrieben; nimm mit --journal eine andere Datei",
	StillRunning: "sie läuft noch in einem anderen Fenster; beende sie zuerst dort", NothingLeft: "es ist nichts mehr zu tun",
	PrescribedLost: "das Journal hat verloren, was vorgegeben war",
	CannotParse:    func(why string) string { return "ihre Vorgabe ist nicht lesbar (" + why + ")" },
	Changed:        "sie wurde inzwischen fortgesetzt oder beendet; ein neuer Start zeigt, wie es steht",
	HasEnded:       "sie ist schon zu Ende",
	NotLogged:      "diese Einheit wird nicht eingetragen",
	NotKept:        "ohne Journal lässt sich nichts auf Dauer auslassen",
	Other:          func(why string) string { return fmt.Sprintf("Meldung des Systems: %s", why) },
}

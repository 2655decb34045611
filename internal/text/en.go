package text

import (
	"fmt"
	"strings"

	"coldfloor/internal/units"
)

// count writes a number and what there are n of.
func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// least says n things as said, as so many at least if others beside them are not
// counted, and as not counted if only those are. A counted 0 is not worth a word.
func least(n int, counted bool, said, atLeast, notCounted string) string {
	switch {
	case n == 0 && counted:
		return ""
	case n == 0:
		return notCounted
	case counted:
		return said
	}
	return atLeast + said
}

// spaced joins what is not empty by a space.
func spaced(a, b string) string { return strings.TrimSpace(a + " " + b) }

// English is the language that is shown if nobody says otherwise.
var English = Language{
	Code: "en",
	Date: units.Date.Short,
	Step: Step{
		LeftSide: "left side", RightSide: "right side", Alternating: "each side, alternating", Left: "left", Right: "right",
		OneRep: "1 rep", Reps: func(n int) string { return count(n, "rep", "reps") }, Seconds: "sec",
		Round:      func(n, of int) string { return fmt.Sprintf("round %d of %d", n, of) },
		Try:        func(n int) string { return fmt.Sprintf("try %d", n) },
		Practice:   func(n int) string { return fmt.Sprintf("practice %d", n) },
		DoneInPart: "done in part", Skipped: "skipped", Done: "done",
		Away:    func(span string) string { return "the machine stood still for " + span },
		SetBack: "the machine's clock was set back", ThenPaused: "; paused where you left off",
		ThenAlone: "; going on, since nobody is at the keys",
		Logged:    "logged; coldfloor log show last shows it, coldfloor log rate last corrects it",
		Empty:     "nothing was done in it, so it counts for nothing; coldfloor log lists it",
		Kept:      "cut short; the next start offers to go on from here",
	},
	Screen: Screen{
		Ready: "GET READY", Work: "WORK", Rest: "REST", Switch: "SWITCH SIDES", Change: "NEXT EXERCISE", RestEnds: "REST ENDS",
		Paused: "PAUSED", OwnPace: "YOUR PACE", Done: "DONE",
		KeyWhenDone: "KEY WHEN DONE", About: "about", Next: "next", Resume: "p to resume",
		GoOn: "any key goes on", ThenDone: "then finished", HelpBack: "? closes the list",
		HelpMore: func(page, of int) string { return fmt.Sprintf("? more keys (%d/%d)", page, of) },
		NoTime:   "a time in s, such as 4.52", NoCount: "a whole number", NoLength: "a length in cm, such as 231",
		Measures: map[string]string{"distance": "distance", "height": "height", "count": "count", "time": "time"},
		NoResult: "none", Ask: func(what, none string) string { return what + ", or " + none },
		NoCell: func(from string) string {
			return "cell_height in the settings is needed to tell whether this is read from " + from
		},
		NoRoom: func(from string) string { return "the window is too small to be read from " + from },
		TooSmall: func(from string) string {
			return "too small to be read from " + from + ": make the window or its letters larger"
		},
		JustLegible: func(from string) string { return "just legible from " + from + "; larger letters would be easier" },
		EasilyRead:  func(from string) string { return "easily read from " + from },
		KeepResult:  "enter keeps it, esc leaves it out", OneMore: "once more", Results: "Results", LeftOut: "left out",
		MoreResults: func(n int) string { return fmt.Sprintf("%d more to come", n) },
		Muted:       "muted", BellOnly: "bell only", SoundOff: "sound off", SoundOn: "sound on", BellVolume: "bell only: the terminal sets its volume",
		More: "15 s more", NoMore: "this set ends by a key, not by the clock",
		Easier: "easier variant", AsGiven: "as prescribed", NoEasier: "this has no easier variant",
		Stop: [3]string{"Stop?", "q stops and logs", "any other key goes on"}, StopUnlogged: "q stops",
		Down: "down", Hold: "hold", Up: "up",
		Of:       func(n int) string { return fmt.Sprintf("of %d", n) },
		Target:   func(worked, target string) string { return worked + " of " + target },
		ToGo:     func(left string) string { return left + " to go" },
		Then:     func(what string) string { return "then " + what },
		ThenRest: func(length string) string { return "then rest " + length },
		Offer:    func(name string) string { return "e easier: " + name },
		Volume:   func(percent int) string { return fmt.Sprintf("volume %d %%", percent) },
	},
	Keys: Keys{
		Finish: "space", Enter: "enter", Escape: "esc",
		EndSet: "end set", Pause: "pause", Resume: "resume", More: "15 s more", Back: "back", Repeat: "repeat the set", Skip: "skip", Easier: "easier",
		Mute: "mute", Louder: "louder", Softer: "softer", Stop: "stop", Help: "keys",
		StopToo: "esc or ctrl+c stops too", AnyOther: "any other key or a click ends the set",
		Up: "up", Down: "down", Choose: "choose", Leave: "leave", NextField: "next", Less: "less", Greater: "more", Change: "change", Save: "save",
	},
	Form: Form{
		Effort: "Effort, 0 to 10", Pain: "Pain", Where: "where", Note: "Note", Save: "Save", Yes: "yes", No: "no",
		NotAnswered: "not answered", Optional: "everything is optional",
		NoteHint: "anything worth keeping", RoundsHint: "completed rounds, as counted; type the right number if it is wrong",
		PainHint: "any pain, during or now? y or n", WhereHint: "where it hurts, such as left knee",
		EffortHint: func(after string) string {
			return "how hard overall? best " + after + ", with coldfloor log rate"
		},
		AskAfter:  "30 minutes after the end",
		Rounds:    func(done, of int) string { return fmt.Sprintf("%d of ", done) + count(of, "round", "rounds") },
		MoreAbove: func(n int) string { return fmt.Sprintf("%d more above", n) },
		MoreBelow: func(n int) string { return fmt.Sprintf("%d more below", n) },
		RPE:       [11]string{"rest", "very very easy", "easy", "moderate", "somewhat hard", "hard", "", "very hard", "", "", "maximal"},
		GoOn:      "go on", NotLogged: "Not logged yet", Kept: "What you typed is kept, and saving it is tried again.",
		TryAgain: "try again", Elsewhere: "save it somewhere else", BackToForm: "back to the form", LeaveWithout: "leave without it",
		WrittenTo: func(file string) string { return "written to " + file + "; put it beside your journal" },
	},
	Choose: Choose{
		Title: "Choose a session", Session: "session", Length: "length", Blocks: "blocks", Contacts: "contacts", LastDone: "last done",
		NotYet: "not yet", Today: "today", Yesterday: "yesterday", DaysAgo: func(n int) string { return count(n, "day ago", "days ago") },
		Level:      func(level string) string { return "Level: " + level },
		Levels:     map[string]string{"beginner": "beginner", "intermediate": "intermediate", "advanced": "advanced"},
		CannotRead: func(files string) string { return "cannot be read: " + files + "; coldfloor check FILE says why" },
		Week:       func(n int) string { return fmt.Sprintf(", week %d", n) },
		StartToday: "start today's session", AllSessions: "all sessions", Leave: "leave",
		LeaveOut: func(date string) string { return "leave out the one of " + date },
		DoMissed: func(date string) string { return "do the missed one of " + date },
		DoNow:    func(date string) string { return "do the one of " + date + " now" },
	},
	Flow: Flow{
		Leave: "leave", OrEnter: " or Enter", GoOn: "go on", Start: "start", Read: "I have read this: go on", DidNotWork: "That did not work",
		NoLog: "The log cannot be written", NoLogText: "What you do would not be kept. Run without a log?", RunWithout: "run without a log", NoLogFlag: "--no-log runs without one",
		Unfinished: "A session was not finished", UnfinishedRehearsal: "A rehearsal was not finished",
		Begun: func(title, when string, done, of int) string {
			return fmt.Sprintf("%s, begun %s: %d of %d sets done.", title, when, done, of)
		},
		LogAsIs: "log it as it stands", GoOnFrom: "go on from where it stopped", Later: "leave it for later",
		OldRun:     "It is more than a day old: log it as it stands, and start a new one.",
		OfferHint:  "coldfloor run on a terminal offers to go on with it, or to log it as it stands",
		CannotGoOn: func(why string) string { return "It cannot be resumed: " + why + "." },
		IsRehearsal: func(speed float64) string {
			return fmt.Sprintf("It is a rehearsal at %g times the speed; start with --speed %g to go on with it.", speed, speed)
		},
		IsReal:       "It is a real session and this is a rehearsal; start without --speed to go on with it.",
		FirstSession: "Before the first session",
		TodayAt:      func(clock string) string { return "today at " + clock },
		YesterdayAt:  func(clock string) string { return "yesterday at " + clock },
		DateAt:       func(date, clock string) string { return date + " at " + clock },
	},
	Sounds: englishSounds,
	Plain: Plain{
		Hint:       "hint:",
		NoSession:  func(names string) string { return "no session is named; there are " + names },
		Wrong:      func(answer, must string) string { return "\"" + answer + "\" will not do; it must be " + must },
		EffortMust: "a number from 0 to 10", RoundsMust: func(rounds string) string {
			return "a number for each block, at most " + rounds
		},
		SwitchSides: "switch sides", NextExercise: "next exercise", Rest: "rest", Work: "work", Ready: "ready", Next: "next",
		ToGo:       func(left string) string { return left + " to go" },
		EasierKey:  func(name string) string { return "e for " + name },
		SetSkipped: "set skipped", InPartReps: func(done, of int) string { return fmt.Sprintf("set done in part, %d of %d reps", done, of) },
		InPartTime: func(taken string) string { return "set done in part, " + taken },
		EndsByKey:  "work, ends when you press Enter", SessionToGo: func(left string) string { return "session " + left + " to go" },
		TenSeconds: "ten seconds",
		WaitEnter:  "wait, press Enter when the set is done", CountIn: "count-in", More: "more", Variant: "variant",
		Pause: "pause", PauseAway: "pause, the machine stood still", ToResume: "p to resume",
		Stopped: "finish, stopped", NothingDone: "finish, nothing was done", Finished: "finish, done", Notice: "notice",
		NotRated: func(run, when string) string { return run + ", was not rated. Effort is best answered " + when + "." },
		RateHint: "hint: coldfloor log rate RUN keeps how hard it was, and any pain; coldfloor log lists the runs", RateLast: "coldfloor log rate last keeps how hard it was, and any pain",
		Rehearsal: "logged as a rehearsal; it counts for nothing", TryAgain: "Enter: try again; w: save it somewhere else; q: leave without it? ",
		LeaveAsIs: "Enter alone leaves an answer as it is.", AskEffort: "How hard was the session as a whole, 0 to 10", AskPain: "Pain: where, or none", AskNote: "Note",
		AskRounds: func(rounds, such string) string {
			return "Completed rounds, a number for each block, such as " + such + " (" + rounds + ")"
		},
		Help: "Enter ends the set; p pauses and resumes, + adds 15 s, b goes back, r repeats the set, s skips, " +
			"e takes the easier variant, t says how much is to go, m mutes, q twice stops, ? says this again",
		KeyboardGone: "the keyboard is gone; the session goes on at its pace", StopTwiceUnlogged: "q again stops, nothing is logged; anything else goes on", StopTwice: "q again stops and logs what was done; anything else goes on",
		EnterEnds: "this set ends when you press Enter, not by the clock", EnterStarts: "Enter starts, ? names the keys, q leaves",
	},
	Care: Care{
		Prepare:    "Warm up first, and clear the floor and the space above your head.",
		ShoesFloor: "Wear shoes that grip, on a dry floor that gives a little; do not jump in socks or on loose mats.",
		Stop: "Stop and get help at pain in the chest, neck, jaw or arm; dizziness or fainting; breathlessness that keeps you from talking; " +
			"a cold sweat; an irregular heartbeat; new pain in a joint; disturbed vision.",
		NotAdvice: "This is not medical advice: with an illness, an injury or a doubt, ask a licensed practitioner first.",
		Under18:   "Players under 18 train with the agreement of a qualified adult.",
		PainNoted: "Pain noted", PainAdvice: "Do not train through it: stop, and see a licensed practitioner about pain that is new, is sharp or does not go away.",
	},
	Sheet: englishSheet, Handout: englishHandout, Day: englishDay, Briefing: englishBriefing, Trouble: englishTrouble, Calendar: englishCalendar, Findings: englishFindings,
}

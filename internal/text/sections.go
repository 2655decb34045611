package text

import "fmt"

// Screen is what the running screen says. What is drawn large is turned into
// capitals there.
type Screen struct {
	// The words of the phases, to be drawn large.
	Ready, Work, Rest, Switch, Change, RestEnds, Paused, OwnPace, Done string

	KeyWhenDone string // after the word of the phase
	About       string // before a count that is worked out from the pace
	Next        string
	Resume      string // with the key p
	GoOn        string
	ThenDone    string
	HelpBack    string // with the key ?
	HelpMore    func(page, of int) string

	KeepResult, OneMore, Results, LeftOut             string
	NoTime, NoCount, NoLength                         string                         // what a result must be
	Measures                                          map[string]string              // what a result is of, by the session file's word
	NoResult                                          string                         // what is typed if there is no result
	Ask                                               func(what, none string) string // for a result
	NoCell, NoRoom, TooSmall, JustLegible, EasilyRead func(from string) string       // whether the time is read from so far
	MoreResults                                       func(n int) string

	Muted, BellOnly, SoundOff, SoundOn string
	BellVolume                         string // in place of Volume, if there is only the bell
	More, NoMore                       string
	Easier, AsGiven, NoEasier          string
	Stop                               [3]string // "Stop?" and the two answers
	StopUnlogged                       string    // the first answer, if there is no log

	Down, Hold, Up string // the phases of a rep, to be drawn large

	Of       func(n int) string // of how many reps the one in hand is
	Target   func(worked, target string) string
	ToGo     func(left string) string
	Then     func(what string) string
	ThenRest func(length string) string
	Offer    func(name string) string // with the key e
	Volume   func(percent int) string
}

// Keys is what the keys at the foot do, and what those are called that have more
// than a sign on them.
type Keys struct {
	Finish        string // that which ends a set, of the several that do
	Enter, Escape string

	EndSet, Pause, Resume, More, Back, Repeat, Skip, Easier, Mute, Louder, Softer, Stop, Help string
	StopToo, AnyOther                                                                         string // what keys do in a run that have no name of their own here
	Up, Down, Choose, Leave, NextField, Less, Greater, Change, Save                           string
}

// Named returns what a key is called that a program calls enter or esc, and any
// other by its sign.
func (k *Keys) Named(key string) string {
	switch key {
	case "enter":
		return k.Enter
	case "esc":
		return k.Escape
	}
	return key
}

// Form is what the form after a session says.
type Form struct {
	Effort, Pain, Where, Note, Save, Yes, No, NotAnswered, Optional string
	NoteHint, RoundsHint, WhereHint                                 string
	PainHint                                                        string // with the first letters of Yes and No, which answer
	EffortHint                                                      func(after string) string
	AskAfter                                                        string // how long after the end effort is answered best
	Rounds                                                          func(done, of int) string
	MoreAbove, MoreBelow                                            func(n int) string
	RPE                                                             [11]string // words of the scale, Foster et al. 2001; empty for a number without

	GoOn                                 string
	NotLogged, Kept, TryAgain, Elsewhere string
	BackToForm, LeaveWithout             string
	WrittenTo                            func(file string) string
}

// Scale returns the effort scale, each figure that has a word with it: "0 rest",
// "1 very very easy", and so on.
func (f *Form) Scale() []string {
	var parts []string
	for n, word := range f.RPE {
		if word != "" {
			parts = append(parts, fmt.Sprintf("%d %s", n, word))
		}
	}
	return parts
}

// Choose is what the list of sessions and the day of a plan of weeks say.
type Choose struct {
	Title                                       string
	Session, Length, Blocks, Contacts, LastDone string // the columns
	NotYet, Today, Yesterday                    string
	DaysAgo                                     func(n int) string
	Level                                       func(level string) string
	Levels                                      map[string]string
	CannotRead                                  func(files string) string
	Week                                        func(n int) string // after a title: ", week 3"

	StartToday, AllSessions, Leave string
	DoMissed, DoNow, LeaveOut      func(date string) string
}

// Flow is what is asked between the start of the program and a run.
type Flow struct {
	Leave, GoOn, Start, Read         string
	OrEnter                          string // after a key that Enter stands for too
	DidNotWork                       string
	NoLog, NoLogText, RunWithout     string
	NoLogFlag                        string // what to call the program with
	Unfinished, UnfinishedRehearsal  string
	Begun                            func(title, when string, done, of int) string
	LogAsIs, GoOnFrom, OldRun, Later string
	OfferHint                        string
	CannotGoOn                       func(why string) string
	IsRehearsal                      func(speed float64) string
	IsReal                           string
	FirstSession                     string
	TodayAt, YesterdayAt             func(clock string) string
	DateAt                           func(date, clock string) string
}

// Plain is what the plain run says.
type Plain struct {
	SwitchSides, NextExercise, Rest, Work, Ready, Next    string
	Hint                                                  string // before what could be done
	NoSession                                             func(names string) string
	Wrong                                                 func(answer, must string) string
	EffortMust                                            string // what an answer must be
	RoundsMust                                            func(rounds string) string
	ToGo                                                  func(left string) string
	EasierKey                                             func(name string) string
	SetSkipped                                            string
	InPartReps                                            func(done, of int) string
	InPartTime                                            func(taken string) string
	EndsByKey                                             string
	SessionToGo                                           func(left string) string
	TenSeconds                                            string
	WaitEnter, CountIn, More, Variant, Pause, PauseAway   string
	ToResume, Stopped, NothingDone, Finished, Notice      string
	NotRated                                              func(run, when string) string
	RateHint, RateLast, Rehearsal, TryAgain               string
	LeaveAsIs, AskEffort, AskPain, AskNote                string                           // the questions at the end
	AskRounds                                             func(rounds, such string) string // such is an answer for an example
	Help, KeyboardGone, StopTwice, EnterEnds, EnterStarts string                           // what can be typed, each followed by Enter
	StopTwiceUnlogged                                     string                           // StopTwice, if there is no log
}

// Package text holds what a player sees and hears on the floor, in every
// language there is: one value a language, every entry filled in. The names
// that a coach wrote stay as they are in files and in the journal; of those
// that the built-in sessions use, a language may show its own in their place.
package text

import (
	"fmt"
	"slices"
	"strings"

	"coldfloor/internal/plan"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Language is all texts of one language. Figures, units and the times of the
// clock are the same in all of them.
type Language struct {
	Code string // ISO 639-1

	Date func(units.Date) string // short, for a reader who knows the year

	Step     Step
	Screen   Screen
	Keys     Keys
	Form     Form
	Choose   Choose
	Flow     Flow
	Plain    Plain
	Care     Care
	Sheet    Sheet
	Handout  Handout
	Day      Day
	Briefing Briefing
	Trouble  Trouble
	Calendar Calendar
	Findings Findings
	Sounds   Sounds

	names func() map[string]string // shown in place of a name that the built-in sessions use, by that name; nil: none
}

// Step is what a step of a plan asks for.
type Step struct {
	LeftSide, RightSide, Alternating string
	Left, Right                      string // the sides alone, to be drawn large
	OneRep                           string
	Reps                             func(n int) string // not 1
	Seconds                          string             // in place of s after a number that is drawn large, where one letter reads as a figure: 5S
	Round                            func(n, of int) string
	Try, Practice                    func(n int) string
	DoneInPart, Skipped, Done        string

	Away       func(span string) string // how long the machine was away
	SetBack    string                   // its clock was
	ThenPaused string                   // what became of the run, after either
	ThenAlone  string
	Logged     string // where to find a session that was logged
	Empty      string // in place of Logged, if nothing was done or said in it
	Kept       string // what becomes of a run that was cut short from outside
}

// Care is what is said for safety's sake. None of it is medical advice.
type Care struct {
	Prepare    string // before a session
	ShoesFloor string // what to stand in and on
	Stop       string // the signs to stop at: hospitals' pages on exercise safety
	NotAdvice  string
	Under18    string // Faigenbaum et al. 2009; Lloyd et al. 2014
	PainNoted  string // the heading of what follows
	PainAdvice string // without the signs of Stop, which follow it
}

// Cautions returns what is shown before somebody's first session, a paragraph
// each.
func (l *Language) Cautions() []string {
	return []string{l.Care.Prepare, l.Care.ShoesFloor, l.Care.Stop, l.Care.NotAdvice, l.Care.Under18}
}

// PainAdvice returns what is shown below Care.PainNoted when a player has noted
// pain.
func (l *Language) PainAdvice() string { return l.Care.PainAdvice + " " + l.Care.Stop }

// PainNoted returns the heading and the advice as one text.
func (l *Language) PainNoted() string { return l.Care.PainNoted + ". " + l.PainAdvice() }

// Name returns what is shown in place of a name, a cue or a sentence of a
// session: the language's own if it is one of the built-in sessions', and else
// the text as the coach wrote it.
func (l *Language) Name(name string) string {
	if l.names == nil {
		return name
	}
	if own, ok := l.names()[name]; ok {
		return own
	}
	return name
}

// languages are all there are; the first is the one that is shown if nobody
// says otherwise.
var languages = []*Language{&English, &German}

// Codes returns the codes of the languages there are.
func Codes() []string {
	codes := make([]string, len(languages))
	for i, l := range languages {
		codes[i] = l.Code
	}
	return codes
}

// In returns the language of a code such as de, or of a system's name for one
// such as de_AT.UTF-8, and English if there is none.
func In(code string) *Language {
	short, _, _ := strings.Cut(strings.ToLower(code), "_")
	short, _, _ = strings.Cut(short, "-")
	short, _, _ = strings.Cut(short, ".")
	i := slices.IndexFunc(languages, func(l *Language) bool { return l.Code == short })
	return languages[max(i, 0)]
}

// Of returns the language that a player sees: that of the code, or the system's
// if it is empty. Getenv is os.Getenv.
func Of(code string, getenv func(string) string) *Language {
	for _, name := range []string{code, getenv("LC_ALL"), getenv("LC_MESSAGES"), getenv("LANG")} {
		if name != "" {
			return In(name)
		}
	}
	return &English
}

// Session returns a copy of a session with the names, cues and sentences that
// the language shows. It is for showing alone: what is logged and written keeps
// the coach's words.
func (l *Language) Session(s *sessions.Session) *sessions.Session {
	if l.names == nil {
		return s
	}
	c := *s
	c.Title, c.For, c.Note = l.Title(s.Title), l.Name(s.For), l.Name(s.Note)
	c.Blocks = slices.Clone(s.Blocks)
	for i := range c.Blocks {
		b := &c.Blocks[i]
		b.Title, b.Note, b.Trains = l.Name(b.Title), l.Name(b.Note), l.all(b.Trains)
		b.Exercises = slices.Clone(b.Exercises)
		for j := range b.Exercises {
			l.exercise(&b.Exercises[j])
		}
	}
	return &c
}

// exercise puts the language's words into an exercise.
func (l *Language) exercise(e *sessions.Exercise) {
	e.Name, e.How, e.Load, e.Way = l.Name(e.Name), l.Name(e.How), l.Name(e.Load), l.Name(e.Way)
	e.Cues, e.Calls = l.all(e.Cues), l.all(e.Calls)
	for _, v := range []*sessions.Variant{&e.Easier, &e.Harder} {
		v.Name, v.How, v.Cues = l.Name(v.Name), l.Name(v.How), l.all(v.Cues)
	}
}

func (l *Language) all(texts []string) []string {
	own := slices.Clone(texts)
	for i := range own {
		own[i] = l.Name(own[i])
	}
	return own
}

// Headed returns a plan whose title and blocks are called as the language calls
// them. It is for showing where a session is in time: its exercises and its
// directions keep the coach's words.
func (l *Language) Headed(p *plan.Plan) *plan.Plan {
	headed, s := *p, *p.Session
	s.Title = l.Title(s.Title)
	headed.Session, headed.Blocks = &s, slices.Clone(p.Blocks)
	for i := range headed.Blocks {
		headed.Blocks[i].Title = l.Name(headed.Blocks[i].Title)
	}
	return &headed
}

// Title puts a title into the language, and the week that a plan of weeks has
// put after it.
func (l *Language) Title(title string) string {
	var week int
	at := strings.LastIndex(title, ", week ")
	if at < 0 {
		return l.Name(title)
	}
	if _, err := fmt.Sscanf(title[at:], ", week %d", &week); err != nil {
		return l.Name(title)
	}
	return l.Name(title[:at]) + l.Choose.Week(week)
}

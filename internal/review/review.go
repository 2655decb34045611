// Package review computes what a player did over the weeks, and what a squad
// did, from the runs of their journals. It takes the runs in any order, one at
// a time, and keeps of each only what is shown: its memory grows with the
// players and the weeks in view, not with the journals.
package review

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/trainingload"
)

// Defaults of Options.
const (
	DefaultWeeks  = 104
	DefaultRecent = 20
)

// Options says how to review. Only Now is needed.
type Options struct {
	Now time.Time // in the zone whose date is today's

	Weeks     int // in view, this one among them; 0: DefaultWeeks
	Recent    int // sessions kept whole, of each player; 0: DefaultRecent
	Tolerance Tolerance

	// The interval between two sessions with jumps, its two ends; 0: those of
	// package trainingload.
	JumpsEarliest, JumpsFull time.Duration
}

// Squad is everybody whose journals were read.
type Squad struct {
	Now       time.Time
	Tolerance Tolerance // that rests were judged with
	Players   []*Player // by name

	Rehearsals int // runs left out: sped up, they trained nobody
	Withdrawn  int // runs left out: taken back by the player
	Empty      int // runs left out: begun, and nothing done
	Differ     int // lines that stood twice and differed; the first counted

	Namesakes []string // names of two players or more, each shown with their file
}

// Player is what one player did. Figures are of all sessions, but for those
// that say otherwise.
type Player struct {
	Name string
	Now  time.Time
	Total

	First, Last time.Time // starts of the first and the last session
	LastTitle   string
	Ahead       int // sessions dated after today, in no week: a clock was wrong

	Weeks  []Week     // in view, without a gap, to the one of today; empty where no session is
	Days   []Day      // of those weeks, to today
	Seven  Seven      // the seven days up to today
	Jumps  *Jumps     // the last ones; nil where there are none
	Pain   []Pain     // the latest first, at most MaxPain
	Recent []*Session // the latest first
}

// Total is what some sessions come to.
type Total struct {
	Sessions int
	Complete int // of Sessions: run to the end of the plan, or done on paper
	Elapsed  time.Duration
	Rounds   Share
	Sets     Share // sessions on paper count in neither
	Reps     Share // of the sets that were come to
	Contacts int   // foot contacts
	Rest     Rest
	Rated    int // sessions with an RPE
	Painful  int // sessions with pain
}

// Unrated returns the number of sessions without an RPE, whose load nobody
// knows.
func (t *Total) Unrated() int { return t.Sessions - t.Rated }

// Share is what was done of what was prescribed. Sessions whose prescription is
// lost count in neither.
type Share struct{ Done, Prescribed int }

// Part returns what part was done, and false where nothing was prescribed.
func (s Share) Part() (float64, bool) {
	if s.Prescribed <= 0 {
		return 0, false
	}
	return float64(s.Done) / float64(s.Prescribed), true
}

// Week is one week, from Monday.
type Week struct {
	Monday time.Time // midnight UTC, standing for the date where the player was
	Total
	Daily [trainingload.Days]float64 // load of each day, of the rated sessions
	Open  bool                       // the week of today, not over
}

// Day is one day's load with the averages up to it. A session without an RPE
// adds nothing, so that the averages are too low by what is not known.
type Day struct {
	Date        time.Time // midnight UTC, standing for the date where the player was
	Load        float64
	Unrated     int     // sessions
	Short, Long float64 // exponentially weighted, over trainingload.ShortSpan and trainingload.LongSpan days
}

// Seven is the seven days up to a day, that day among them.
type Seven struct {
	trainingload.Week
	Sessions, Unrated int
}

// Jumps is the last session that had foot contacts.
type Jumps struct {
	At       time.Time // its end
	Title    string
	Contacts int
	trainingload.Recovery
}

// MaxPain bounds the pain notes kept of a player; Total.Painful counts all.
const MaxPain = 200

// Pain is what a player said of pain in a session. It is shown as it is, and
// never averaged.
type Pain struct {
	Start time.Time // of the session
	Title string
	Where string
	Note  string
}

// Session is one run with its figures.
type Session struct {
	*journal.Run
	Player string
	Rounds []Block
	Sets   Share // none of a session on paper
	Reps   Share // of the sets that were come to
	Rest   Rest
	Load   float64 // 0 where it is not Rated
	Rated  bool
}

// Block is the rounds of one block of a session.
type Block struct {
	Title string
	Share
}

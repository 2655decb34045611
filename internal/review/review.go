// Package review computes what a player did over the weeks, and what a squad
// did, from the runs of their journals. It takes the runs in any order, one at
// a time, and keeps of each only what is shown: its memory grows with the
// players and the weeks in view, not with the journals.
//
// # What the figures are
//
// A run that counts (journal.Run.Counts) is a session. Sessions, rounds, sets,
// reps, and whether a session was rated or painful, are of the date that it
// began on. Foot contacts, length and load are of the dates of its sets: length
// and load are split by the time worked on each. A rest is of the date that it
// ended on. All dates are those where the player was; one that lies ahead of
// today although the run began before now is today. What else lies ahead of
// today is in no week.
//
// Every set that ended counts its reps and contacts, one done again as well;
// towards sets and rounds it counts once. A rest that any work followed is
// judged: kept if it was off by no more than the Tolerance, else early or
// overrun.
//
// What is not known is not zero: a session whose rounds nobody said is in
// neither number of Rounds, and counts in RoundsUnknown; contacts that nobody
// counted make a sum a least figure; the load of a session that nobody rated is
// unknown, and so are monotony and strain of its week.
package review

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/measured"
	"coldfloor/internal/season"
	"coldfloor/internal/trainingload"
	"coldfloor/sessions/weeks"
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

	// Players are in the squad whether or not anything of theirs is logged.
	Players []string

	// Worthwhile is the smallest change of a test that matters, by the runs.Key
	// of the exercise's name, in the unit of its results.
	Worthwhile map[string]float64

	// Plan returns the plan of weeks that a player is held against, by the
	// player's name; nil, or nil returned: none.
	Plan func(player string) *weeks.Plan
}

// Squad is everybody whose journals were read.
type Squad struct {
	Now       time.Time
	Tolerance Tolerance // that rests were judged with
	Planned   bool      // held against a plan of weeks
	Players   []*Player // those in trouble first; see Sort

	Rehearsals int // runs left out: sped up, they trained nobody
	Withdrawn  int // runs left out: taken back by the player
	Empty      int // runs left out: begun, with nothing done
	Differ     int // lines that stood twice and differed; the first counted
	Missing    int // lines that are missing by their numbers

	Namesakes []string // names of two players or more, each shown with their file
}

// Player is what one player did. Figures are of all sessions, except those
// that say otherwise.
type Player struct {
	Name string
	Now  time.Time
	Total

	First, Last time.Time // starts of the first and the last session
	LastTitle   string
	Ahead       int // sessions dated after now: a clock was wrong

	Weeks      []Week     // in view, without a gap, to the one of today; empty if no session is
	Days       []Day      // of those weeks, to today
	Seven      Seven      // the seven days up to today
	Jumps      *Jumps     // the last ones; nil if there are none
	Pain       []Pain     // every statement that stands, the latest first, at most MaxPain
	Notes      []Note     // what else was said, the latest first, at most MaxPain
	Recent     []*Session // the latest first
	Exercises  []Exercise // that were left out, done in part or taken easier
	Elsewhere  int        // sessions logged in another zone than that of Now
	NotBegun   int        // sets prescribed that a session ended before
	Measured   []*measured.Series
	Worthwhile map[string]float64 // as in Options
	Season     *season.Season     // nil: held against no plan
	Standing   Standing

	planned map[*journal.Run]*gist // that Season may hold
}

// Total is what some sessions come to.
type Total struct {
	Sessions      int
	Complete      int // of Sessions: to the end of the plan, or done on paper
	Elapsed       time.Duration
	Rounds        Share
	RoundsUnknown int   // sessions of which nobody said how many rounds were done
	Sets          Share // sessions on paper count in neither
	Reps          Share // of the sets that ended
	Contacts      int   // foot contacts that are known
	Uncounted     int   // sessions with jumps in them, not all of them counted
	Rest          Rest
	Rated         int // sessions with an RPE
	Painful       int // sessions with pain
}

// Unrated returns the number of sessions without an RPE, whose load nobody
// knows.
func (t *Total) Unrated() int { return t.Sessions - t.Rated }

// ContactCount returns the foot contacts, at least those that are known.
func (t *Total) ContactCount() journal.Count {
	return journal.Count{N: t.Contacts, Known: t.Uncounted == 0}
}

// Share is what was done of what was prescribed.
type Share struct{ Done, Prescribed int }

// Part returns what part was done, and false if nothing was prescribed.
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
	Daily   [trainingload.Days]float64 // load of each day, of the rated sessions
	Unknown [trainingload.Days]bool    // a session of that day is not rated
	Open    bool                       // the week of today, not over
}

// Day is one day's load with the averages up to it. A session without an RPE
// adds nothing, so that the averages are then least figures.
type Day struct {
	Date           time.Time // midnight UTC, standing for the date where the player was
	Load           float64
	Unrated        int     // sessions
	Short, Long    float64 // exponentially weighted, over trainingload.ShortSpan and LongSpan days
	ShortAtLeast   bool    // a session that weighs in it is not rated
	LongAtLeast    bool
	Contacts       int
	Uncounted      int // sessions with jumps not counted
	Worked         bool
	rests, restCut int
}

// Seven is the seven days up to a day, that day among them.
type Seven struct {
	trainingload.Week
	Sessions, Unrated int // Unrated: worked at in these days
}

// Jumps is the last session that had jumps.
type Jumps struct {
	At       time.Time // of its last set with jumps, at the latest now
	Title    string
	Contacts journal.Count // not known if nobody said how many
	Ahead    bool          // the journal dates it after now: a clock was wrong
	trainingload.Recovery
}

// MaxPain bounds the statements kept of a player; Total.Painful counts all
// sessions.
const MaxPain = 200

// Pain is one statement of pain. It is shown as it is, and never averaged.
type Pain struct {
	At    time.Time // when it was said
	Start time.Time // of the session
	Title string
	Where string // may be empty
	Level *int   // 0 to 10; nil: no number was given
	Note  string
	New   bool // nothing was said of that place in the journal.NewPainAfter days before
}

// Note is what a player said of a session that says nothing of pain.
type Note struct {
	At    time.Time
	Start time.Time // of the session
	Title string
	Text  string
}

// Session is one run with its figures.
type Session struct {
	*journal.Run
	Player string
	Rounds []Block
	Known  bool  // somebody knows how many rounds were done
	Sets   Share // none of a session on paper
	Reps   Share // of the sets that ended
	Rest   Rest
	Load   float64 // 0 if it is not Rated
	Rated  bool
}

// Block is the rounds of one block of a session.
type Block struct {
	Title string
	Share // Done is 0 unless Session.Known
}

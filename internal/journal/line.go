package journal

import "time"

// Version is the version of the line format that this package writes.
const Version = 1

// Event names what a line tells. The line's field of that name holds the rest.
type Event string

// The events.
const (
	EventStarted  Event = "started"
	EventSet      Event = "set"
	EventRest     Event = "rest"
	EventPause    Event = "pause"
	EventResume   Event = "resume" // after a pause, or in a later process: then with Restart
	EventMove     Event = "move"   // the player skipped, went back or repeated
	EventExtend   Event = "extend"
	EventVariant  Event = "variant"
	EventFinish   Event = "finish"
	EventMeasure  Event = "measure" // what a try measured, or what it is put right to
	EventRating   Event = "rating"
	EventCorrect  Event = "correct"  // puts right what earlier lines of the run say
	EventWithdraw Event = "withdraw" // the run is to count no more; it has no field
	EventRestore  Event = "restore"  // it is to count again; it has no field
)

// Line is one line of a journal. Run and N together name it for good: a line
// that arrives twice is the same line. As it is written it ends with a
// checksum, which Append adds and the reader holds it against.
type Line struct {
	V     int       `json:"v"`
	Run   string    `json:"run"` // random, one for each run of a session
	N     int       `json:"n"`   // from 1 within the run
	At    time.Time `json:"at"`  // wall time, with its zone
	Clock float64   `json:"t_s"` // on the session's clock, seconds since the start, pauses left out
	Event Event     `json:"event"`

	Started *Started `json:"started,omitempty"`
	Set     *Set     `json:"set,omitempty"`
	Rest    *Rest    `json:"rest,omitempty"`
	Pause   *Pause   `json:"pause,omitempty"`
	Resume  *Resume  `json:"resume,omitempty"`
	Move    *Move    `json:"move,omitempty"`
	Extend  *Extend  `json:"extend,omitempty"`
	Variant *Variant `json:"variant,omitempty"`
	Finish  *Finish  `json:"finish,omitempty"`
	Measure *Measure `json:"measure,omitempty"`
	Rating  *Rating  `json:"rating,omitempty"`
	Correct *Correct `json:"correct,omitempty"`
}

// Started opens a run. It holds the session's whole text, so that an
// unfinished run can be resumed whatever became of the file.
type Started struct {
	Title   string         `json:"title"`
	Source  string         `json:"source"`            // built-in name or absolute path; "paper" for one added by hand
	Text    string         `json:"text,omitempty"`    // the session file
	Player  string         `json:"player,omitempty"`  // the settings' name
	TotalS  float64        `json:"total_s"`           // planned length, seconds
	Blocks  []PlannedBlock `json:"blocks"`            // what was prescribed
	Program string         `json:"program,omitempty"` // version of the program
	Speed   float64        `json:"speed,omitempty"`   // of a rehearsal: how many times as fast it was run
	Seed    uint64         `json:"seed,string,omitempty"`
	ByHand  bool           `json:"by_hand,omitempty"` // every set with reps waits for a key
	Weeks   *Weeks         `json:"weeks,omitempty"`   // what put the session on its day, if something did
}

// Weeks is the place of a session in a plan of weeks.
type Weeks struct {
	Title   string `json:"title"`   // of the plan
	Starts  string `json:"starts"`  // its first day, such as 2026-12-07
	Week    int    `json:"week"`    // from 1
	Date    string `json:"date"`    // the day the session was meant for
	Place   int    `json:"place"`   // of the session on that day, from 1
	Session string `json:"session"` // as it is written in the plan
}

// PlannedBlock is what was prescribed of one block.
type PlannedBlock struct {
	Title    string `json:"title"`
	Rounds   int    `json:"rounds"`
	Sets     int    `json:"sets"`
	Contacts Count  `json:"contacts"` // foot contacts; unknown if it has jumps that nobody counted
}

// Place is where in a session something happened; all count from 1.
type Place struct {
	Block    int `json:"block"`
	Round    int `json:"round"`
	Exercise int `json:"exercise,omitempty"`
}

// Set is one exercise in one round as it was done. A later Set of the same
// place was done as well: both count, and once towards their round.
type Set struct {
	Place
	Name     string   `json:"name"`
	Outcome  string   `json:"outcome"` // Done, Partial or Skipped
	End      string   `json:"end"`     // what ended it: clock, finish, skip, back, repeat or stop
	ByHand   bool     `json:"by_hand,omitempty"`
	PlannedS float64  `json:"planned_s"`          // work, both sides, seconds
	TakenS   float64  `json:"taken_s"`            // work, both sides, pauses left out
	PausedS  float64  `json:"paused_s,omitempty"` // pauses meanwhile
	Reps     int      `json:"reps"`               // both sides counted; work broken off counts as far as the pace had got
	Planned  int      `json:"planned_reps"`
	Contacts Count    `json:"contacts"` // foot contacts of those reps; unknown if nobody counted them
	Sides    []string `json:"sides"`    // in the order worked
	Easier   bool     `json:"easier,omitempty"`
	Variant  string   `json:"variant,omitempty"` // name of the easier variant, if it was on and has its own
	Paced    bool     `json:"paced,omitempty"`   // every side ended by the clock: TakenS says nothing of the player's own pace

	At time.Time `json:"-"` // when it ended: its line's
}

// Rest is one rest as it was taken.
type Rest struct {
	Place               // of the set it follows
	PrescribedS float64 `json:"prescribed_s"`
	TakenS      float64 `json:"taken_s"`            // by the wall, until work began again: PausedS is within it
	PausedS     float64 `json:"paused_s,omitempty"` // of TakenS
	End         string  `json:"end"`                // as of a set

	At   time.Time `json:"-"` // when it ended: its line's
	Left bool      `json:"-"` // no work followed it
}

// Pause tells that the session's clock came to stand.
type Pause struct {
	Cause string `json:"cause"` // key or gap
}

// Resume tells that it runs again.
type Resume struct {
	Restart bool `json:"restart,omitempty"` // in a new process, after one that ended early
	Step    int  `json:"step,omitempty"`    // with Restart: index of the plan's step it goes on with
}

// Move tells that the player left a step for another.
type Move struct {
	Cause string `json:"cause"` // skip, back or repeat
	Kind  string `json:"kind"`  // of the step left, as plan.Kind
	Place        // of the step left; zero for the lead-in
}

// Extend tells that a step was made longer.
type Extend struct {
	Kind string  `json:"kind"` // of the step, as plan.Kind
	ByS  float64 `json:"by_s"`
	Place
}

// Variant tells that the easier variant of an exercise was taken up or laid down.
type Variant struct {
	Place
	Name   string `json:"name"`
	Easier bool   `json:"easier"`
}

// Finish closes a run. One without a Finish is unfinished.
type Finish struct {
	Outcome  string  `json:"outcome"`   // complete, stopped, or interrupted: logged as it stood by a later start
	ElapsedS float64 `json:"elapsed_s"` // wall time it took, pauses within; the time between two processes is left out
}

// Measure is what one try of an exercise measured. A later Measure of the same
// place, side and try takes the earlier one's place.
type Measure struct {
	Place
	Name     string   `json:"name"`
	Side     string   `json:"side"`    // left, right or both
	Try      int      `json:"try"`     // from 1
	Measure  string   `json:"measure"` // distance, height, count or time
	Value    *float64 `json:"value"`   // cm, cm, a number, or s; nil: left out
	Way      string   `json:"way,omitempty"`
	Practice bool     `json:"practice,omitempty"`

	At time.Time `json:"-"` // when it was said: its line's
}

// Rating is what the player said of a run at one time. Of rounds and effort a
// field left out leaves what an earlier rating said. Pain, where, how strong
// and the note stand together as a statement of their own, beside earlier ones.
type Rating struct {
	Rounds    []int    `json:"rounds,omitempty"` // completed rounds, a block each
	RPE       *float64 `json:"rpe,omitempty"`    // session-RPE, 0 to 10
	Pain      *bool    `json:"pain,omitempty"`
	Where     *string  `json:"where,omitempty"`      // the pain
	PainLevel *int     `json:"pain_level,omitempty"` // how strong, 0 to 10
	NoPain    bool     `json:"no_pain,omitempty"`    // earlier statements of pain were a slip
	Note      *string  `json:"note,omitempty"`
}

// Correct puts right what earlier lines say of the run as a whole; ratings are
// put right by a later Rating.
type Correct struct {
	At      *time.Time `json:"at,omitempty"`       // when it began
	LengthS *float64   `json:"length_s,omitempty"` // how long it took
}

// Package export writes what was done as tidy tables: sessions, sets and rests,
// a row each, for a spreadsheet or a database.
package export

import "time"

// The rows. The parquet tag names a column, the doc tag says what stands in it,
// and a free tag marks text that somebody typed. A pointer is a value that may
// be missing.

// Date is a day, as the number of days since 1 January 1970.
type Date int32

// DateOf returns the date of t where it was taken.
func DateOf(t time.Time) Date {
	y, m, d := t.Date()
	return Date(time.Date(y, m, d, 0, 0, 0, 0, time.UTC).Unix() / (24 * 60 * 60))
}

// String returns the date as ISO 8601 has it: 2026-01-05.
func (d Date) String() string {
	return time.Unix(int64(d)*24*60*60, 0).UTC().Format(time.DateOnly)
}

// SessionRow is one session.
type SessionRow struct {
	Player             string    `parquet:"player" free:"yes" doc:"name in the player's settings, or else the journal's"`
	RunID              string    `parquet:"run_id" doc:"the session's own random name; joins the three tables"`
	StartedAt          time.Time `parquet:"started_at,timestamp(millisecond)" doc:"when it began; Parquet holds it in UTC"`
	Date               Date      `parquet:"date,date" doc:"the date it began, where the player was"`
	Title              string    `parquet:"title" free:"yes" doc:"title of the session file"`
	State              string    `parquet:"state" doc:"complete, stopped, interrupted or unfinished"`
	OnPaper            bool      `parquet:"on_paper" doc:"added by hand afterwards; it has no sets and no rests"`
	PlannedS           *float64  `parquet:"planned_s,optional" doc:"planned length, seconds"`
	ElapsedS           float64   `parquet:"elapsed_s" doc:"length by the wall clock, pauses within, seconds"`
	Pauses             int64     `parquet:"pauses" doc:"number of pauses"`
	RoundsPrescribed   *int64    `parquet:"rounds_prescribed,optional" doc:"rounds of all blocks"`
	RoundsDone         *int64    `parquet:"rounds_done,optional" doc:"rounds completed: as the player said, or else counted"`
	SetsPrescribed     *int64    `parquet:"sets_prescribed,optional" doc:"sets of all blocks"`
	SetsDone           *int64    `parquet:"sets_done,optional" doc:"sets done in full, one that was done again counted once"`
	RepsDone           *int64    `parquet:"reps_done,optional" doc:"reps of every set, both sides counted"`
	ContactsPrescribed *int64    `parquet:"contacts_prescribed,optional" doc:"foot contacts"`
	ContactsDone       *int64    `parquet:"contacts_done,optional" doc:"foot contacts of the reps done; missing if not known"`
	RestPrescribedS    float64   `parquet:"rest_prescribed_s" doc:"sum of the rests that work followed, seconds"`
	RestTakenS         float64   `parquet:"rest_taken_s" doc:"the same as taken, seconds"`
	RPE                *float64  `parquet:"rpe,optional" doc:"session-RPE, 0 to 10 (Foster et al. 2001)"`
	LoadAU             *float64  `parquet:"load_au,optional" doc:"rpe × minutes elapsed, arbitrary units (Foster 1998)"`
	Pain               *bool     `parquet:"pain,optional" doc:"whether the player reported pain; missing if not asked"`
	PainWhere          *string   `parquet:"pain_where,optional" free:"yes" doc:"where"`
	Note               *string   `parquet:"note,optional" free:"yes" doc:"the player's note"`
	Corrected          bool      `parquet:"corrected" doc:"when it began or how long it took was corrected afterwards"`
	File               string    `parquet:"file" free:"yes" doc:"journal it was read from, the first if several have it"`
}

// SetRow is one exercise in one round, its two sides together.
type SetRow struct {
	Player      string     `parquet:"player" free:"yes" doc:"as in sessions"`
	RunID       string     `parquet:"run_id" doc:"the session"`
	Date        Date       `parquet:"date,date" doc:"the date it ended, or if not known as in sessions"`
	Block       int64      `parquet:"block" doc:"number of the block, from 1"`
	BlockTitle  *string    `parquet:"block_title,optional" free:"yes" doc:"title of the block"`
	Round       int64      `parquet:"round" doc:"number of the round in its block, from 1"`
	Exercise    int64      `parquet:"exercise" doc:"number of the exercise in its round, from 1"`
	Name        string     `parquet:"name" free:"yes" doc:"the exercise"`
	Outcome     string     `parquet:"outcome" doc:"done, partial or skipped"`
	EndedBy     string     `parquet:"ended_by" doc:"clock, finish, skip, back, repeat or stop"`
	ByHand      bool       `parquet:"by_hand" doc:"the set ends only when the player says so"`
	Paced       bool       `parquet:"paced" doc:"every side ended by the clock: taken_s says nothing of the player's own pace"`
	Easier      bool       `parquet:"easier" doc:"in the easier variant"`
	Sides       string     `parquet:"sides" doc:"sides in the order worked, a space between"`
	PlannedS    float64    `parquet:"planned_s" doc:"work as planned, both sides, seconds"`
	TakenS      float64    `parquet:"taken_s" doc:"work as done, pauses left out, seconds"`
	PausedS     float64    `parquet:"paused_s" doc:"pauses in the set, seconds"`
	PlannedReps int64      `parquet:"planned_reps" doc:"reps, both sides counted; 0 if timed"`
	Reps        int64      `parquet:"reps" doc:"reps done, both sides counted; work broken off counts as far as the pace had got"`
	Contacts    *int64     `parquet:"contacts,optional" doc:"foot contacts of those reps; missing if not known"`
	EndedAt     *time.Time `parquet:"ended_at,optional,timestamp(millisecond)" doc:"when it ended; Parquet holds it in UTC"`
	Again       bool       `parquet:"again" doc:"the set had been done before in this session"`
}

// RestRow is one rest.
type RestRow struct {
	Player      string     `parquet:"player" free:"yes" doc:"as in sessions"`
	RunID       string     `parquet:"run_id" doc:"the session"`
	Date        Date       `parquet:"date,date" doc:"the date it ended, or if not known as in sessions"`
	Number      int64      `parquet:"number" doc:"of the rest in its session, in the order taken, from 1"`
	Block       int64      `parquet:"block" doc:"block of the set before, from 1"`
	Round       int64      `parquet:"round" doc:"round of the set before, from 1"`
	Exercise    int64      `parquet:"exercise" doc:"exercise of the set before, from 1"`
	PrescribedS float64    `parquet:"prescribed_s" doc:"seconds"`
	TakenS      float64    `parquet:"taken_s" doc:"by the wall clock until work began again, pauses within, seconds"`
	PausedS     float64    `parquet:"paused_s" doc:"of taken_s, seconds"`
	DeviationS  float64    `parquet:"deviation_s" doc:"taken_s less prescribed_s, seconds"`
	EndedBy     string     `parquet:"ended_by" doc:"clock, finish, skip, back, repeat or stop"`
	Verdict     string     `parquet:"verdict" doc:"kept, early, overrun, or left: no work followed"`
	EndedAt     *time.Time `parquet:"ended_at,optional,timestamp(millisecond)" doc:"when it ended; Parquet holds it in UTC"`
}

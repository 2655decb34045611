package report

import (
	"time"

	"coldfloor/internal/review"
	"coldfloor/internal/season"
)

// Season is a plan of weeks and what a player did of it.
type Season struct {
	Title  string       `json:"title"`
	Starts string       `json:"starts"`
	Weeks  []SeasonWeek `json:"weeks"`
	Others int          `json:"others"` // sessions for no day of the plan
}

// SeasonWeek is one week of it. What is planned is that of the days that have
// come.
type SeasonWeek struct {
	Week             int         `json:"week"`
	From             string      `json:"from"`
	Lighter          bool        `json:"lighter"`
	Hold             bool        `json:"hold"`
	Planned          int         `json:"planned"` // sessions, those left out not counted
	Come             int         `json:"come"`    // of them, those up to today or done already
	Done             int         `json:"done"`
	Late             int         `json:"late"`
	Missed           int         `json:"missed"`
	Skipped          int         `json:"skipped"`
	LeftOut          int         `json:"left_out"`
	RoundsDone       int         `json:"rounds_done"`
	RoundsPrescribed int         `json:"rounds_prescribed"`
	RoundsUnknown    int         `json:"rounds_unknown"`
	Contacts         *int        `json:"contacts"`         // null unless all are known
	ContactsPlanned  *int        `json:"contacts_planned"` // likewise
	ElapsedS         float64     `json:"elapsed_s"`
	PlannedS         float64     `json:"planned_s"`
	Rest             Rest        `json:"rest"`
	Days             []SeasonDay `json:"days"`
}

// SeasonDay is one session of the plan.
type SeasonDay struct {
	Date    string     `json:"date"`
	Place   int        `json:"place,omitempty"`
	Session string     `json:"session"`
	State   string     `json:"state"` // done, missed, skipped, left out, due or ahead
	Late    *int       `json:"late_days,omitempty"`
	Runs    []string   `json:"runs,omitempty"`
	Begun   *time.Time `json:"begun,omitempty"`
	RPE     *float64   `json:"rpe,omitempty"`
	Pain    *bool      `json:"pain,omitempty"`
}

func seasonOf(p *review.Player, t review.Tolerance) *Season {
	s := p.Season
	if s == nil {
		return nil
	}
	out := &Season{Title: s.Plan.Title, Starts: s.Plan.Starts.String(), Weeks: []SeasonWeek{}, Others: len(s.Others)}
	for i := range s.Weeks {
		w := &s.Weeks[i]
		d := doneIn(p, w, t)
		week := SeasonWeek{Week: w.Number, From: w.From.String(), Lighter: w.Lighter, Hold: w.Hold, Planned: d.Planned, Come: d.Come,
			Done: d.Done, Late: d.Late, Missed: d.Missed, Skipped: d.Skipped, LeftOut: d.LeftOut,
			RoundsDone: d.rounds.Done, RoundsPrescribed: d.rounds.Prescribed, RoundsUnknown: d.unknown,
			Contacts: d.contacts.Pointer(), ContactsPlanned: d.asked.Pointer(), ElapsedS: d.length.Seconds(), PlannedS: d.planned.Seconds(),
			Rest: rest(&d.rest), Days: []SeasonDay{}}
		for j := range w.Sessions {
			week.Days = append(week.Days, seasonDay(&w.Sessions[j]))
		}
		out.Weeks = append(out.Weeks, week)
	}
	return out
}

func seasonDay(d *season.Day) SeasonDay {
	out := SeasonDay{Date: d.Date.String(), Place: d.Place, Session: d.Slot.Session, State: string(d.State)}
	for _, r := range d.Runs {
		out.Runs = append(out.Runs, r.ID)
	}
	if late, ok := d.Late(); ok {
		r := d.Runs[0]
		out.Late, out.Begun, out.RPE, out.Pain = &late, &r.Start, r.Rating.RPE, r.Rating.Pain
	}
	return out
}

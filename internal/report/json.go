package report

import (
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/review"
	"coldfloor/internal/trainingload"
)

// Document is a review as JSON. Lengths are in seconds. What nobody knows is
// null or left out, and a figure of which only a part is known says so beside.
type Document struct {
	Now        time.Time `json:"now"`
	Players    []Player  `json:"players"`
	Rehearsals int       `json:"rehearsals"`      // left out
	Deleted    int       `json:"deleted"`         // left out
	Empty      int       `json:"empty"`           // left out
	Differ     int       `json:"differing_lines"` // of two that stand twice and differ the first counts
	Missing    int       `json:"missing_lines"`   // by their numbers
	Namesakes  []string  `json:"namesakes,omitempty"`
}

// Player is one player of a Document. Figures are of all sessions, except for
// weeks, days and listed, which are those in view.
type Player struct {
	Name string `json:"name"`
	Total
	First     time.Time  `json:"first,omitzero"`
	Last      time.Time  `json:"last,omitzero"`
	LastTitle string     `json:"last_title"`
	Ahead     int        `json:"ahead,omitempty"` // sessions dated after today
	SevenDays SevenDays  `json:"seven_days"`
	Jumps     *Jumps     `json:"jumps,omitempty"`
	Standing  Standing   `json:"standing"`
	Pain      []Pain     `json:"pain"`
	Notes     []Note     `json:"notes"`
	Exercises []Exercise `json:"exercises"` // left out, done in part or taken easier
	NotBegun  int        `json:"sets_not_begun"`
	Tests     []Test     `json:"tests"`
	Season    *Season    `json:"season,omitempty"` // held against a plan of weeks
	Weeks     []Week     `json:"weeks"`
	Days      []Day      `json:"days"`
	Listed    []Session  `json:"listed"` // the latest first
}

// Total is what some sessions come to.
type Total struct {
	Sessions         int     `json:"sessions"`
	Complete         int     `json:"complete"`
	ElapsedS         float64 `json:"elapsed_s"`
	RoundsDone       int     `json:"rounds_done"`
	RoundsPrescribed int     `json:"rounds_prescribed"`
	RoundsUnknown    int     `json:"rounds_unknown"` // sessions whose rounds nobody said; in neither number
	SetsDone         int     `json:"sets_done"`
	SetsPrescribed   int     `json:"sets_prescribed"`
	Contacts         *int    `json:"contacts"`          // null unless all are known
	ContactsLeast    int     `json:"contacts_at_least"` // those that are known
	Rest             Rest    `json:"rest"`
	Unrated          int     `json:"unrated"`
	Painful          int     `json:"painful"`
}

// Rest is how some rests were kept.
type Rest struct {
	Count       int      `json:"count"`
	Kept        int      `json:"kept"`
	Early       int      `json:"early"`
	Overrun     int      `json:"overrun"`
	PrescribedS float64  `json:"prescribed_s"`
	TakenS      float64  `json:"taken_s"`
	MedianS     *float64 `json:"median_deviation_s,omitempty"`
	FirstS      *float64 `json:"first_quartile_s,omitempty"`
	ThirdS      *float64 `json:"third_quartile_s,omitempty"`
}

// SevenDays is the seven days up to now.
type SevenDays struct {
	Load     float64  `json:"load"`
	Sessions int      `json:"sessions"`
	Unrated  int      `json:"unrated"`
	Monotony *float64 `json:"monotony,omitempty"`
	Strain   *float64 `json:"strain,omitempty"`
}

// Jumps is the last session with foot contacts.
type Jumps struct {
	Ended    time.Time `json:"ended"`
	Title    string    `json:"title"`
	Contacts *int      `json:"contacts"`        // null: nobody said how many
	Ahead    bool      `json:"ahead,omitempty"` // dated after now, taken as just ended
	AgoS     float64   `json:"ago_s"`
	Earliest time.Time `json:"earliest"` // the shorter interval is up
	Full     time.Time `json:"full"`     // the longer one is
}

// Pain is one statement of pain.
type Pain struct {
	At    time.Time `json:"at"`
	Start time.Time `json:"start"` // of the session
	Title string    `json:"title"`
	Where string    `json:"where,omitempty"`
	Level *int      `json:"level"` // of 10; null: no number was given
	Note  string    `json:"note,omitempty"`
	New   bool      `json:"new,omitempty"`
}

// Note is what else was said of a session.
type Note struct {
	At    time.Time `json:"at"`
	Start time.Time `json:"start"`
	Title string    `json:"title"`
	Text  string    `json:"note"`
}

// Week is one week, from Monday.
type Week struct {
	Monday string `json:"monday"`
	Total
	Daily    [trainingload.Days]*float64 `json:"daily_load"` // null: a session of that day is not rated
	Load     float64                     `json:"load"`
	AtLeast  bool                        `json:"load_at_least,omitempty"` // a session is not rated
	MeanLoad float64                     `json:"mean_load"`
	SDLoad   float64                     `json:"sd_load"` // of a sample, n−1
	Monotony *float64                    `json:"monotony,omitempty"`
	Strain   *float64                    `json:"strain,omitempty"`
	Without  string                      `json:"no_monotony_because,omitempty"`
	Open     bool                        `json:"open,omitempty"` // not over
}

// Day is one day's load and its weighted averages.
type Day struct {
	Date         string  `json:"date"`
	Load         float64 `json:"load"`
	Unrated      int     `json:"unrated,omitempty"`
	Short        float64 `json:"weighted_7"`
	Long         float64 `json:"weighted_28"`
	ShortAtLeast bool    `json:"weighted_7_at_least,omitempty"`
	LongAtLeast  bool    `json:"weighted_28_at_least,omitempty"`
}

// Session is one session.
type Session struct {
	Run              string    `json:"run"`
	Start            time.Time `json:"start"`
	Title            string    `json:"title"`
	State            string    `json:"state"`
	ElapsedS         float64   `json:"elapsed_s"`
	RoundsDone       *int      `json:"rounds_done"` // null: nobody said
	RoundsPrescribed int       `json:"rounds_prescribed"`
	Contacts         *int      `json:"contacts"` // null: not known
	RPE              *float64  `json:"rpe,omitempty"`
	Load             *float64  `json:"load,omitempty"`
	Pain             *bool     `json:"pain,omitempty"`
	PainWhere        *string   `json:"pain_where,omitempty"`
	Note             *string   `json:"note,omitempty"`
	Rest             Rest      `json:"rest"`
	Rests            []OneRest `json:"rests"`
}

// OneRest is one rest with the set that it follows.
type OneRest struct {
	journal.Place
	PrescribedS float64 `json:"prescribed_s"`
	TakenS      float64 `json:"taken_s"`
	DeviationS  float64 `json:"deviation_s"`
	Verdict     string  `json:"verdict"` // kept, early, overrun, or left: no set followed
}

// JSONOf returns a review as JSON.
func JSONOf(s *review.Squad) Document {
	d := Document{Now: s.Now, Players: []Player{}, Rehearsals: s.Rehearsals, Deleted: s.Withdrawn, Empty: s.Empty, Differ: s.Differ, Missing: s.Missing, Namesakes: s.Namesakes}
	for _, p := range s.Players {
		d.Players = append(d.Players, player(p, s.Tolerance))
	}
	return d
}

func player(p *review.Player, t review.Tolerance) Player {
	d := Player{Name: p.Name, Total: total(&p.Total), First: p.First, Last: p.Last, LastTitle: p.LastTitle, Ahead: p.Ahead,
		SevenDays: SevenDays{Load: p.Seven.Total, Sessions: p.Seven.Sessions, Unrated: p.Seven.Unrated},
		Standing:  standing(&p.Standing), Pain: []Pain{}, Notes: []Note{}, Exercises: []Exercise{}, NotBegun: p.NotBegun,
		Tests: tests(p), Season: seasonOf(p, t), Weeks: []Week{}, Days: []Day{}, Listed: []Session{}}
	if m, ok := p.Seven.Monotony(); ok && p.Seven.Unrated == 0 {
		strain, _ := p.Seven.Strain()
		d.SevenDays.Monotony, d.SevenDays.Strain = &m, &strain
	}
	if j := p.Jumps; j != nil {
		d.Jumps = &Jumps{j.At, j.Title, j.Contacts.Pointer(), j.Ahead, j.Since.Seconds(), j.Earliest, j.Full}
	}
	for _, n := range p.Pain {
		d.Pain = append(d.Pain, Pain(n))
	}
	for _, n := range p.Notes {
		d.Notes = append(d.Notes, Note(n))
	}
	for _, e := range p.Exercises {
		d.Exercises = append(d.Exercises, Exercise{e.Name, e.Sets, e.Skipped, e.Partial, e.Easier, e.Variant, e.Last})
	}
	for i := range p.Weeks {
		d.Weeks = append(d.Weeks, week(&p.Weeks[i]))
	}
	for _, x := range p.Days {
		d.Days = append(d.Days, Day{x.Date.Format(dateOnly), x.Load, x.Unrated, x.Short, x.Long, x.ShortAtLeast, x.LongAtLeast})
	}
	for _, s := range p.Recent {
		d.Listed = append(d.Listed, session(s, t))
	}
	return d
}

func total(t *review.Total) Total {
	return Total{Sessions: t.Sessions, Complete: t.Complete, ElapsedS: t.Elapsed.Seconds(), RoundsDone: t.Rounds.Done,
		RoundsPrescribed: t.Rounds.Prescribed, RoundsUnknown: t.RoundsUnknown, SetsDone: t.Sets.Done, SetsPrescribed: t.Sets.Prescribed,
		Contacts: t.ContactCount().Pointer(), ContactsLeast: t.Contacts,
		Rest: rest(&t.Rest), Unrated: t.Unrated(), Painful: t.Painful}
}

func rest(r *review.Rest) Rest {
	d := Rest{Count: r.Count, Kept: r.Kept, Early: r.Early, Overrun: r.Overrun,
		PrescribedS: r.Prescribed.Seconds(), TakenS: r.Taken.Seconds()}
	if m, ok := r.Deviations.Median(); ok {
		first, third, _ := r.Deviations.Middle()
		d.MedianS, d.FirstS, d.ThirdS = inSeconds(m), inSeconds(first), inSeconds(third)
	}
	return d
}

func inSeconds(d time.Duration) *float64 {
	s := d.Seconds()
	return &s
}

func week(w *review.Week) Week {
	l := w.Load()
	d := Week{Monday: w.Monday.Format(dateOnly), Total: total(&w.Total), Load: l.Total, AtLeast: w.Lacks() > 0, MeanLoad: l.Mean, SDLoad: l.SD, Open: w.Open}
	for i := range w.Daily {
		if !w.Unknown[i] {
			d.Daily[i] = &w.Daily[i]
		}
	}
	m, s, why := w.Monotony()
	if d.Without = why; why == "" {
		d.Monotony, d.Strain = &m, &s
	}
	return d
}

func session(s *review.Session, t review.Tolerance) Session {
	rounds, known := s.AllRounds()
	d := Session{Run: s.ID, Start: s.Start, Title: s.Title(), State: string(s.State), ElapsedS: s.Elapsed.Seconds(),
		RoundsPrescribed: rounds.Prescribed, Contacts: review.ContactsOf(s.Run).Pointer(),
		RPE: s.Rating.RPE, Pain: s.Rating.Pain, PainWhere: s.PainWhere(), Note: s.Notes(), Rest: rest(&s.Rest), Rests: []OneRest{}}
	if known {
		d.RoundsDone = &rounds.Done
	}
	if s.Rated {
		d.Load = &s.Load
	}
	for i := range s.Rests {
		r := &s.Rests[i]
		deviation, v := t.Judge(r)
		d.Rests = append(d.Rests, OneRest{r.Place, r.PrescribedS, r.TakenS, deviation.Seconds(), string(v)})
	}
	return d
}

package report

import (
	"time"

	"coldfloor/internal/measured"
	"coldfloor/internal/review"
)

// Standing is how a player stands on the day of the review.
type Standing struct {
	DaysSince        *int     `json:"days_since"` // the last session; null: none is logged
	Sessions14       int      `json:"sessions_14_days"`
	Planned14        *int     `json:"planned_14_days"` // null: held against no plan
	Kept14           *int     `json:"done_of_planned_14_days"`
	Missed14         *int     `json:"missed_14_days"`
	RestsCut14       int      `json:"rests_cut_14_days"`
	Rests14          int      `json:"rests_14_days"`
	RestsCutBefore   int      `json:"rests_cut_before"`
	RestsBefore      int      `json:"rests_before"`
	ContactsThisWeek *int     `json:"contacts_this_week"` // null unless all are known
	ContactsUsual    *float64 `json:"contacts_usual"`     // a week, of the four before; null: not known
	Load7            *float64 `json:"load_7_days"`        // null: a session is not rated
	LoadUsual        *float64 `json:"load_usual"`         // in seven days, of the four times seven before
	DaysRunning      int      `json:"days_running"`
	Trouble          string   `json:"trouble"` // none, cuts rests, away, hurts, or hurts badly
}

// troubles are the words for a player's trouble.
var troubles = map[review.Trouble]string{review.NoTrouble: "none", review.CutsRests: "cuts rests", review.Away: "away",
	review.Hurts: "hurts", review.HurtsBadly: "hurts badly"}

func standing(s *review.Standing) Standing {
	d := Standing{Sessions14: s.Sessions, RestsCut14: s.Cut.Done, Rests14: s.Cut.Prescribed, RestsCutBefore: s.CutBefore.Done,
		RestsBefore: s.CutBefore.Prescribed, ContactsThisWeek: s.Contacts.Pointer(), ContactsUsual: mean(s.ContactsUsual),
		Load7: mean(s.Load), LoadUsual: mean(s.LoadUsual), DaysRunning: s.Running, Trouble: troubles[s.Trouble]}
	if s.Known {
		d.DaysSince = &s.Since
	}
	if s.Held {
		d.Planned14, d.Kept14, d.Missed14 = &s.Planned, &s.Kept, &s.Missed
	}
	return d
}

// mean returns a mean all of which is known, or nil.
func mean(u review.Usual) *float64 {
	if u.Weeks == 0 || u.AtLeast {
		return nil
	}
	return &u.Mean
}

// Exercise is how often an exercise was not done as prescribed.
type Exercise struct {
	Name    string    `json:"name"`
	Sets    int       `json:"sets"`
	Skipped int       `json:"left_out"`
	Partial int       `json:"in_part"`
	Easier  int       `json:"easier"`
	Variant string    `json:"easier_as,omitempty"`
	Last    time.Time `json:"last"`
}

// Test is the results of one exercise, measure, way and side.
type Test struct {
	Name    string    `json:"name"`
	Measure string    `json:"measure"`
	Way     string    `json:"way,omitempty"`
	Side    string    `json:"side"`
	Unit    string    `json:"unit,omitempty"`
	Days    []TestDay `json:"days"`          // the first one counts for nothing
	Error   *float64  `json:"typical_error"` // of one try; null: too few tries
	Change  *float64  `json:"change"`        // since the first day that counts
	Least   *float64  `json:"least_detectable"`
	Lack    string    `json:"lack,omitempty"` // why there is no change to be told
}

// TestDay is the tries of one day.
type TestDay struct {
	Date     string    `json:"date"`
	Tries    []float64 `json:"tries"`
	Practice []float64 `json:"practice,omitempty"`
	LeftOut  int       `json:"left_out,omitempty"`
	Mean     *float64  `json:"mean"`
	Best     *float64  `json:"best,omitempty"`
}

func tests(p *review.Player) []Test {
	all := []Test{}
	for _, x := range p.Measured {
		t := Test{Name: x.Name, Measure: x.Measure, Way: x.Way, Side: x.Side, Unit: x.Unit(), Days: []TestDay{}}
		for i := range x.Days {
			t.Days = append(t.Days, testDay(x, &x.Days[i]))
		}
		c, lack := x.Change()
		t.Lack = string(lack)
		if c.Error.Enough() {
			t.Error = &c.Error.SD
		}
		if c.From != nil {
			t.Change = &c.By
		}
		if lack == "" {
			t.Least = &c.Least
		}
		all = append(all, t)
	}
	return all
}

func testDay(x *measured.Series, d *measured.Day) TestDay {
	t := TestDay{Date: d.Date.String(), Tries: append([]float64{}, d.Tries...), Practice: d.Practice, LeftOut: d.LeftOut}
	if m, ok := d.Mean(); ok {
		t.Mean = &m
	}
	if b, ok := x.Best(d); ok {
		t.Best = &b
	}
	return t
}

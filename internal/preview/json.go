// Package preview shows a session's length and dose before it is run.
package preview

import (
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/pace"
	"coldfloor/internal/plan"
	"coldfloor/internal/units"
)

// Document is a preview as JSON. Times are in seconds.
type Document struct {
	Title string `json:"title"`
	Totals
	Blocks      []Block        `json:"blocks"`
	Steps       []Step         `json:"steps"`
	RestPerWork *float64       `json:"rest_per_work"`    // of the whole session
	Counted     bool           `json:"contacts_counted"` // false: there are jumps whose contacts are not in Contacts
	YourPace    *pace.Document `json:"your_pace,omitempty"`
}

// Totals is the length and the dose of a session or a block; TotalS is the
// sum of WorkS, RestS and ChangeS.
type Totals struct {
	TotalS   float64 `json:"total_s"`
	WorkS    float64 `json:"work_s"`
	RestS    float64 `json:"rest_s"`
	ChangeS  float64 `json:"change_s"` // lead-in, switch and change steps
	Sets     int     `json:"sets"`
	Reps     int     `json:"reps"`
	Contacts int     `json:"contacts"`
}

// Block is one block of a Document.
type Block struct {
	Title  string  `json:"title"`
	Rounds int     `json:"rounds"`
	StartS float64 `json:"start_s"`
	Totals
	RestPerWork *float64 `json:"rest_per_work"`    // plan.Ratio, to a thousandth; null if there is none
	Counted     bool     `json:"contacts_counted"` // false: there are jumps whose contacts are not in Contacts
}

// Step is one step of a Document. Block, Round and Exercise count from 1 and
// are left out if they do not apply.
type Step struct {
	Kind     string  `json:"kind"`
	StartS   float64 `json:"start_s"`
	LengthS  float64 `json:"length_s"`
	Block    int     `json:"block,omitempty"`
	Round    int     `json:"round,omitempty"`
	Exercise int     `json:"exercise,omitempty"`
	Name     string  `json:"name,omitempty"`
	Side     string  `json:"side,omitempty"`
	Reps     int     `json:"reps"`
}

// Of returns the preview of a plan.
func Of(p *plan.Plan) Document {
	d := Document{Title: p.Session.Title, Totals: totals(p.Totals), RestPerWork: restPerWork(p.Ratio(0)), Counted: jumps.AllCounted(p.Session.Blocks...), Blocks: []Block{}, Steps: []Step{}}
	for i, b := range p.Blocks {
		d.Blocks = append(d.Blocks, Block{b.Title, b.Rounds, b.Start.Seconds(), totals(b.Totals), restPerWork(p.Ratio(i + 1)), jumps.AllCounted(p.Session.Blocks[i])})
	}
	for _, s := range p.Steps {
		d.Steps = append(d.Steps, Step{string(s.Kind), s.Start.Seconds(), s.Length.Seconds(),
			s.Block, s.Round, s.Exercise, s.Name, string(s.Side), s.Reps})
	}
	return d
}

func totals(t plan.Totals) Totals {
	sec := func(d time.Duration) float64 { return d.Seconds() }
	return Totals{sec(t.Total), sec(t.Work), sec(t.Rest), sec(t.Change), t.Sets, t.Reps, t.Contacts}
}

// restPerWork returns a ratio's work to rest as 1:N, to a thousandth, or nil
// if there is none.
func restPerWork(r plan.Ratio) *float64 {
	if !r.Known() {
		return nil
	}
	v := units.Thousandths(r.Value())
	return &v
}

package logbook

import (
	"time"

	"coldfloor/internal/journal"
)

// Document is one run as JSON. Times are in seconds. What is not known is left
// out; sets, rests and amendments are there if one run is shown.
type Document struct {
	Run       string        `json:"run"`
	Start     time.Time     `json:"start"`
	Title     string        `json:"title"`
	Source    string        `json:"source,omitempty"`
	Player    string        `json:"player,omitempty"`
	State     string        `json:"state"` // complete, stopped, interrupted or unfinished
	Live      bool          `json:"live,omitempty"`
	Deleted   bool          `json:"deleted,omitempty"`
	Paper     bool          `json:"on_paper,omitempty"`
	Speed     float64       `json:"speed,omitempty"`   // of a rehearsal
	TotalS    float64       `json:"total_s,omitempty"` // prescribed
	ElapsedS  float64       `json:"elapsed_s"`         // taken, by the wall
	Blocks    []Block       `json:"blocks"`
	Contacts  journal.Count `json:"contacts"` // null: not known
	RPE       *float64      `json:"rpe,omitempty"`
	Load      *float64      `json:"load,omitempty"` // RPE × minutes
	Pain      *bool         `json:"pain,omitempty"`
	PainWhere *string       `json:"pain_where,omitempty"`
	Note      *string       `json:"note,omitempty"`

	Said       []journal.Statement `json:"said,omitempty"` // of pain, and notes, each as it was said
	Measures   []journal.Measure   `json:"measures,omitempty"`
	Sets       []journal.Set       `json:"sets,omitempty"`
	Rests      []journal.Rest      `json:"rests,omitempty"`
	Amendments []journal.Line      `json:"amendments,omitempty"`
}

// Block is what was prescribed and done of one block.
type Block struct {
	Title      string        `json:"title"`
	Rounds     int           `json:"rounds"`                // prescribed
	RoundsDone *int          `json:"rounds_done,omitempty"` // as the player said, or as counted
	Counted    *int          `json:"rounds_counted,omitempty"`
	Contacts   journal.Count `json:"contacts"` // prescribed; null: not known
}

// Of returns r as JSON for a list of runs.
func Of(r *journal.Run, live func(id string) bool) Document {
	d := Document{Run: r.ID, Start: r.Start, Title: r.Title(), State: string(r.State),
		Live: r.State == journal.Unfinished && live(r.ID), Deleted: r.Withdrawn, Paper: r.OnPaper(),
		ElapsedS: r.Elapsed.Seconds(), Blocks: []Block{}, Contacts: r.Contacts(),
		RPE: r.Rating.RPE, Pain: r.Rating.Pain, PainWhere: r.PainWhere(), Note: r.Notes()}
	if s := r.Started; s != nil {
		d.Source, d.Player, d.Speed, d.TotalS = s.Source, s.Player, s.Speed, s.TotalS
	}
	if load, ok := r.Load(); ok {
		d.Load = &load
	}
	done, counted := r.RoundsDone(), r.RoundsCounted()
	for i, b := range r.Blocks() {
		d.Blocks = append(d.Blocks, Block{Title: b.Title, Rounds: b.Rounds, Contacts: b.Contacts,
			RoundsDone: element(done, i), Counted: element(counted, i)})
	}
	return d
}

// MeasuresOf returns what was measured in a run, to be written as JSON.
func MeasuresOf(r *journal.Run) []journal.Measure {
	return append([]journal.Measure{}, r.Measures...)
}

// InFull returns r as JSON with all that was done.
func InFull(r *journal.Run, live func(id string) bool) Document {
	d := Of(r, live)
	d.Sets, d.Rests, d.Amendments = r.Sets, r.Rests, r.Amendments
	d.Said, d.Measures = r.Said, r.Measures
	return d
}

func element(of []int, i int) *int {
	if i >= len(of) {
		return nil
	}
	return &of[i]
}

package logbook

import (
	"fmt"
	"math"
	"strings"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
)

const (
	unknown  = "–"
	dateTime = "2006-01-02 15:04"
)

// List returns the runs as a table, a line each in their order.
func List(runs []*journal.Run, live func(id string) bool) string {
	t := texttable.Table{
		Header: []string{"run", "date", "title", "rounds", "length", "effort", "load", "pain", "state"},
		Right:  []bool{false, false, false, false, true, true, true},
	}
	short := Short(runs)
	starts := make([]time.Time, len(runs))
	for i, r := range runs {
		starts[i] = r.Start
	}
	shown := faceOf(time.Local, starts...)
	for _, r := range runs {
		t.Rows = append(t.Rows, []string{short[r.ID], shown.at(r.Start, dateTime), safetext.Fit(r.Title(), 36), rounds(r),
			units.Clock(r.Elapsed), effort(r), loadOf(r), pain(r), State(r, live)})
	}
	return t.String() + shown.note(time.Now())
}

// rounds returns the completed rounds of those prescribed, a figure a block.
func rounds(r *journal.Run) string {
	blocks, done := r.Blocks(), r.RoundsDone()
	if len(blocks) == 0 && done == nil {
		return unknown
	}
	parts := make([]string, max(len(blocks), len(done)))
	for i := range parts {
		parts[i] = figure(done, i)
		if i < len(blocks) {
			parts[i] += fmt.Sprintf("/%d", blocks[i].Rounds)
		}
	}
	return strings.Join(parts, " ")
}

// figure returns the figure at i, if there is one.
func figure(of []int, i int) string {
	if i < len(of) {
		return fmt.Sprint(of[i])
	}
	return unknown
}

func effort(r *journal.Run) string {
	if r.Rating.RPE == nil {
		return unknown
	}
	return fmt.Sprint(*r.Rating.RPE)
}

func loadOf(r *journal.Run) string {
	load, ok := r.Load()
	if !ok {
		return unknown
	}
	return fmt.Sprint(math.Round(load))
}

// pain returns a mark if there was pain, and none if it is not known.
func pain(r *journal.Run) string {
	switch {
	case r.Rating.Pain == nil:
		return unknown
	case *r.Rating.Pain:
		return "PAIN"
	}
	return "no"
}

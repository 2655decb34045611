package sheet

import (
	"fmt"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/strip"
	"coldfloor/internal/units"
)

// textCells is how many characters wide the strip is where it is text.
const textCells = 72

// stripOf lays a plan along a line as long as its time.
func stripOf(p *plan.Plan) Strip {
	cells := strip.Of(p, textCells)
	s := Strip{Text: cells.Text(nil) + "\n" + cells.Scale()}
	at := func(d time.Duration) float64 { return float64(d) / float64(p.Total) }
	for _, st := range strip.Stretches(p, strip.Steps) {
		s.Parts = append(s.Parts, Part{partKind(st.Kind), at(st.Start), at(st.End)})
	}
	for _, st := range strip.Stretches(p, strip.Blocks) {
		if st.Kind != plan.Rest && st.Block > 0 {
			length := units.Clock(p.Blocks[st.Block-1].Total)
			s.Blocks = append(s.Blocks, Span{fmt.Sprint(st.Block), length, at(st.Start), at(st.End)})
		}
	}
	every := markEvery(p.Total)
	for t := time.Duration(0); t <= p.Total; t += every {
		s.Marks = append(s.Marks, Mark{at(t), units.Clock(t)})
	}
	return s
}

// marksOf returns the characters of the kinds in the strip's text.
func marksOf(kinds ...plan.Kind) string {
	marks := ""
	for _, k := range kinds {
		marks += string(strip.Mark(k, nil))
	}
	return marks
}

// partKind tells work and rest from all that lies between.
func partKind(k plan.Kind) plan.Kind {
	if k == plan.Work || k == plan.Rest {
		return k
	}
	return plan.Change
}

// markEvery returns a round time that divides the total into at most nine.
func markEvery(total time.Duration) time.Duration {
	for _, m := range []time.Duration{1, 2, 5, 10, 15, 30} {
		if total <= 9*m*time.Minute {
			return m * time.Minute
		}
	}
	return time.Hour
}

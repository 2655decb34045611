package pace

import (
	"fmt"
	"strings"

	"coldfloor/internal/safetext"
	"coldfloor/internal/units"
)

// Line returns the estimate in a sentence: the player's own length, its range
// and what it rests on, or that there is too little to tell. It is empty if
// the plan has no reps.
func (e Estimate) Line() string {
	switch {
	case e.Enough():
		line := fmt.Sprintf("your length: %s, four times out of five between %s and %s; from %s that you ended, in %s",
			units.Clock(e.Yours), units.Clock(e.Low), units.Clock(e.High),
			units.Count(e.Sets, "set"), units.Count(e.Sessions, "session"))
		if len(e.Lacking) > 0 {
			line += "; at the prescribed pace: " + names(e.Lacking)
		}
		return line
	case len(e.Lacking) > 0:
		most := e.Lacking[0]
		for _, r := range e.Lacking {
			if r.Sets > most.Sets {
				most = r
			}
		}
		if most.Sets == 0 {
			return fmt.Sprintf("your length: unknown, you ended none of its sets yourself; it takes %d sets of an exercise, in %d sessions", MinSets, MinSessions)
		}
		return fmt.Sprintf("your length: too little to tell, with %s that you ended, in %s, of %s; it takes %d sets of an exercise, in %d sessions",
			units.Count(most.Sets, "set"), units.Count(most.Sessions, "session"), safetext.Clean(most.Name), MinSets, MinSessions)
	}
	return ""
}

func names(reps []Rep) string {
	var all []string
	for _, r := range reps {
		all = append(all, safetext.Clean(r.Name))
	}
	return strings.Join(all, ", ")
}

// Document is an Estimate as JSON. Times are in seconds.
type Document struct {
	Enough   bool     `json:"enough"` // false: too little to tell, the lengths are the prescribed one
	YoursS   float64  `json:"yours_s"`
	LowS     float64  `json:"low_s"`
	HighS    float64  `json:"high_s"`
	Part     float64  `json:"part"` // of sessions that lie between low and high
	Sets     int      `json:"sets"`
	Sessions int      `json:"sessions"`
	Reps     []RepDoc `json:"reps"`    // exercises with enough sets
	Lacking  []RepDoc `json:"lacking"` // exercises with too few
}

// RepDoc is a Rep as JSON. The lengths are 0 if no set is known.
type RepDoc struct {
	Name           string  `json:"name"`
	PrescribedS    float64 `json:"prescribed_s"`
	MedianS        float64 `json:"median_s"`
	FirstQuartileS float64 `json:"first_quartile_s"`
	ThirdQuartileS float64 `json:"third_quartile_s"`
	Sets           int     `json:"sets"`
	Sessions       int     `json:"sessions"`
}

// Document returns e for JSON.
func (e Estimate) Document() Document {
	return Document{e.Enough(), e.Yours.Seconds(), e.Low.Seconds(), e.High.Seconds(), Part, e.Sets, e.Sessions, docs(e.Own), docs(e.Lacking)}
}

func docs(reps []Rep) []RepDoc {
	all := make([]RepDoc, len(reps))
	for i, r := range reps {
		all[i] = RepDoc{r.Name, r.Prescribed.Seconds(), r.Median.Seconds(), r.First.Seconds(), r.Third.Seconds(), r.Sets, r.Sessions}
	}
	return all
}

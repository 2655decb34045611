package sessions

import "coldfloor/internal/yamlread"

// Measure is what comes out of a set whose result the player types: the empty
// Measure is "nothing".
type Measure string

// The measures, and the unit that each is typed in.
const (
	MeasureDistance Measure = "distance" // cm
	MeasureHeight   Measure = "height"   // cm
	MeasureCount    Measure = "count"    // a count
	MeasureTime     Measure = "time"     // s
)

// Unit returns the unit that a result is typed in, and nothing for a count.
func (m Measure) Unit() string {
	switch m {
	case MeasureDistance, MeasureHeight:
		return "cm"
	case MeasureTime:
		return "s"
	}
	return ""
}

// Tries says whether the sets of a measured exercise count.
type Tries string

// Practice marks sets whose results do not count. The empty Tries is "they do".
const Practice Tries = "practice"

// readMeasure reads what comes out of a set and how it is taken.
func readMeasure(m *yamlread.Mapping, e *Exercise) {
	e.Measure = Measure(m.Enum("measure", "", string(MeasureDistance), string(MeasureHeight), string(MeasureCount), string(MeasureTime)))
	e.Way = m.Text("way", MaxLabel)
	e.Tries = Tries(m.Enum("tries", "", string(Practice)))
	for _, k := range []string{"way", "tries"} {
		if m.Has(k) && !m.Has("measure") {
			m.Problem(k, quote(k)+" needs something that is measured", "add measure: distance, height, count or time, or take it out")
		}
	}
}

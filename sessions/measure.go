package sessions

import (
	"fmt"
	"strconv"
	"strings"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

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

// Bounds of a result, in the measure's unit: far beyond what people do, and close
// enough to catch metres typed for centimetres.
const (
	leastDistance, mostDistance = 10, 2000
	leastHeight, mostHeight     = 1, 500
	mostCount                   = 10_000
	mostTime                    = 3600
)

// ParseResult reads a result as a player types it: digits with a comma or a
// point, in the measure's own unit or with a unit after them. The error reads on
// from the text, as in `"2.31"` + " is not …", and says how to write it.
func (m Measure) ParseResult(text string) (float64, error) {
	text = strings.Replace(strings.TrimSpace(text), ",", ".", 1)
	switch m {
	case MeasureDistance:
		return centimetres(text, leastDistance, mostDistance)
	case MeasureHeight:
		return centimetres(text, leastHeight, mostHeight)
	case MeasureTime:
		v, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "s")), 64)
		if err != nil || !(v > 0 && v <= mostTime) {
			return 0, fmt.Errorf("is not a time in s up to %d, such as 4.52", mostTime)
		}
		return v, nil
	}
	v, err := strconv.Atoi(text)
	if err != nil || v < 0 || v > mostCount {
		return 0, fmt.Errorf("is not a whole number up to %d", mostCount)
	}
	return float64(v), nil
}

// centimetres reads a length from least to most, in cm if no unit is given.
func centimetres(text string, least, most float64) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		var l units.Length
		l, err = units.ParseLength(text)
		v = float64(l) / float64(units.Centimetre)
	}
	if err != nil || !(v >= least && v <= most) {
		return 0, fmt.Errorf("is not a length in cm from %g to %g, such as 231", least, most)
	}
	return v, nil
}

package logbook

import (
	"strconv"
	"strings"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
	"coldfloor/internal/texttable"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// Measures returns the results that were measured in a run as a table, each
// with the number by which it is named.
func Measures(r *journal.Run) string { return measures(r).String() }

func measures(r *journal.Run) texttable.Table {
	t := texttable.Table{Header: []string{"result", "round", "what", "side", "try", "measured"}, Right: []bool{true, true, false, false, true, true}}
	for i := range r.Measures {
		m := &r.Measures[i]
		name, side := safetext.Fit(m.Name, 44), m.Side
		if m.Practice {
			name += " (practice)"
		}
		if side == "both" {
			side = ""
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(i + 1), strconv.Itoa(m.Round), name, side, strconv.Itoa(m.Try), result(m)})
	}
	return t
}

// result returns what was measured with its unit, or a dash if it was left out.
func result(m *journal.Measure) string {
	if m.Value == nil {
		return unknown
	}
	text := strconv.FormatFloat(*m.Value, 'f', -1, 64)
	return strings.TrimSpace(text + " " + sessions.Measure(m.Measure).Unit())
}

// ParseResult returns the line that puts right what try number of a run
// measured: a length such as 231 or 2.31m, a time such as 4.52 or 4.52s, a
// whole number of times, or none.
func ParseResult(r *journal.Run, number, value string) (*journal.Measure, error) {
	if len(r.Measures) == 0 {
		return nil, fault.New("coldfloor log lists the runs; name another", "nothing was measured in this run")
	}
	n, err := strconv.Atoi(number)
	if err != nil || n < 1 || n > len(r.Measures) {
		return nil, fault.New("coldfloor log measure RUN lists them", "%q is not the number of a result: this run has %s", number, units.Count(len(r.Measures), "result"))
	}
	m := r.Measures[n-1]
	m.Value = nil
	if strings.EqualFold(value, "none") {
		return &m, nil
	}
	v, err := sessions.Measure(m.Measure).ParseResult(value)
	if err != nil {
		return nil, fault.New("none leaves a result out", "%q %w", value, err)
	}
	m.Value = &v
	return &m, nil
}

package journal

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
)

// settle returns what counts of the lines that have one number: the first
// event of the run itself, and every amendment. The error tells of an event
// that differs from the first.
func settle(lines []Entry) (event *Line, amendments []*Line, err error) {
	first := 0
	for i := range lines {
		e := &lines[i]
		switch {
		case e.Event.amends():
			if !slices.ContainsFunc(amendments, func(l *Line) bool { return same(l, &e.Line) }) {
				amendments = append(amendments, &e.Line)
			}
		case event == nil:
			event, first = &e.Line, e.Number
		case err == nil && !same(event, &e.Line):
			err = fmt.Errorf("run %s has two lines %d that differ, a %s in line %d and a %s in line %d; the first counts",
				e.Run, e.N, event.Event, first, e.Event, e.Number)
		}
	}
	return event, amendments, err
}

// same reports whether two lines say the same.
func same(a, b *Line) bool {
	x, xerr := json.Marshal(a)
	y, yerr := json.Marshal(b)
	return xerr == nil && yerr == nil && bytes.Equal(x, y)
}

// inTime puts amendments, which are in the order of their numbers, in the order
// of time from the number on at which copies of the journal parted.
func inTime(about []*Line, parted int) {
	if parted == 0 {
		return
	}
	i := slices.IndexFunc(about, func(l *Line) bool { return l.N >= parted })
	slices.SortStableFunc(about[i:], func(x, y *Line) int { return x.At.Compare(y.At) })
}

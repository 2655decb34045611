package sessions

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
)

// Bounds of the calls of a set.
const (
	MaxCalls         = 20               // directions of one exercise
	MaxCall          = 40               // characters of one direction
	MinCallEvery     = time.Second      // a direction must be heard out before the next
	DefaultCallEvery = 3 * time.Second  // between two calls
	CallsEnd         = time.Second      // of the set, in which nothing more is called
	MaxCallEvery     = 10 * time.Minute // between two calls
)

// Interval is the time between two calls: at least Least and at most Most,
// which are the same if it is fixed. The zero Interval is "no calls".
type Interval struct{ Least, Most time.Duration }

// String writes the interval as a coach types it, such as "3s" or "2s-4s".
func (i Interval) String() string {
	if i.Least == i.Most {
		return units.FormatDuration(i.Least)
	}
	return units.FormatDuration(i.Least) + "-" + units.FormatDuration(i.Most)
}

const callEveryHint = "write a time of 1s or more, such as 3s, or the least and the most, such as 2s-4s"

// ParseInterval reads a time, or two with - between them, of which the second
// is not the shorter. Both are from MinCallEvery to MaxCallEvery.
func ParseInterval(text string) (Interval, error) {
	first, second, two := strings.Cut(text, "-")
	if !two {
		second = first
	}
	least, err := units.ParseDuration(first)
	if err != nil {
		return Interval{}, err
	}
	most, err := units.ParseDuration(second)
	switch {
	case err != nil:
		return Interval{}, err
	case least < MinCallEvery:
		return Interval{}, errors.New("is shorter than " + units.FormatDuration(MinCallEvery) + ": a call must be heard out before the next")
	case most > MaxCallEvery:
		return Interval{}, errors.New("is longer than " + units.FormatDuration(MaxCallEvery))
	case most < least:
		return Interval{}, errors.New("has its longest time first")
	}
	return Interval{least, most}, nil
}

// readCalls reads the directions that are called in a timed set.
func readCalls(m *yamlread.Mapping, e *Exercise) {
	e.Calls = m.Texts("calls", MaxCalls, MaxCall)
	m.Scalar("call_every", callEveryHint, func(text string) (err error) {
		e.CallEvery, err = ParseInterval(text)
		return err
	})
	if !m.Has("calls") {
		if m.Has("call_every") {
			m.Problem("call_every", `"call_every" needs directions to call`, "add calls: [left, right], or take it out")
		}
		return
	}
	if !m.Has("call_every") {
		e.CallEvery = Interval{DefaultCallEvery, DefaultCallEvery}
	}
	if !m.Has("time") && !m.Has("time_per_side") {
		m.Problem("calls", "directions are called in timed sets only", "write time or time_per_side in place of reps, or take calls out")
		return
	}
	checkCalls(m, e)
}

// checkCalls notes directions that cannot be called.
func checkCalls(m *yamlread.Mapping, e *Exercise) {
	if n := len(e.Calls); n == 1 {
		m.Problem("calls", "one direction leaves nothing to react to", "write at least two, such as [left, right]")
	}
	seen := map[string]bool{}
	for _, c := range e.Calls {
		if c != "" && seen[c] {
			m.Problem("calls", "the direction "+strconv.Quote(c)+" is given twice", "keep one of them: each is called as often as the others")
		}
		seen[c] = true
	}
	length := e.Time + e.TimePerSide
	if length > 0 && e.CallEvery.Least > 0 && !e.LastsForACall() {
		m.Problem("calls", fmt.Sprintf("a set of %s may end before anything is called", units.FormatDuration(length)),
			fmt.Sprintf("make it longer than %s, or call more often", units.FormatDuration(e.CallEvery.Most+CallsEnd)))
	}
}

// LastsForACall reports whether a set of directions is long enough for at
// least one of them; it holds for every set without calls.
func (e *Exercise) LastsForACall() bool {
	return len(e.Calls) == 0 || e.Time+e.TimePerSide-CallsEnd >= e.CallEvery.Most
}

// quote quotes a key in a message.
func quote(key string) string { return strconv.Quote(key) }

package journal

import (
	"encoding/json"
	"math"
	"strconv"
)

// Count is a number of things done or prescribed (reps, foot contacts, rounds),
// which may be known only in part or not at all. The zero Count is not known.
// What is not known is not zero: as JSON it is null, on screens a dash.
type Count struct {
	N     int  // what is known of it, from 0
	Known bool // N is all of it; otherwise the number is N at least
}

// CountOf returns the count n, or an unknown one if no line may say n.
func CountOf(n int) Count {
	if n < 0 || n > math.MaxInt32 {
		return Count{}
	}
	return Count{N: n, Known: true}
}

// Add returns the sum of two counts, known if both are.
func (c Count) Add(d Count) Count { return Count{c.N + d.N, c.Known && d.Known} }

// Any reports whether it is certain that there is something to count.
func (c Count) Any() bool { return c.N > 0 }

// AtLeast reports whether only a part of the number is known.
func (c Count) AtLeast() bool { return !c.Known && c.N > 0 }

// Unknown reports whether nothing is known of the number.
func (c Count) Unknown() bool { return !c.Known && c.N == 0 }

// Pointer returns the number, or nil unless all of it is known.
func (c Count) Pointer() *int {
	if !c.Known {
		return nil
	}
	return &c.N
}

// String returns the number as screens show it: 16, "at least 16", or a dash.
func (c Count) String() string {
	switch {
	case c.Known:
		return strconv.Itoa(c.N)
	case c.N > 0:
		return "at least " + strconv.Itoa(c.N)
	}
	return "–"
}

// Cell returns the number as a table's cell shows it: 16, ≥ 16, or a dash.
func (c Count) Cell() string {
	if c.AtLeast() {
		return "≥ " + strconv.Itoa(c.N)
	}
	return c.String()
}

// MarshalJSON returns the number, or null unless all of it is known.
func (c Count) MarshalJSON() ([]byte, error) {
	if !c.Known {
		return []byte("null"), nil
	}
	return strconv.AppendInt(nil, int64(c.N), 10), nil
}

// UnmarshalJSON reads a number or null.
func (c *Count) UnmarshalJSON(text []byte) error {
	*c = Count{}
	if string(text) == "null" {
		return nil
	}
	if err := json.Unmarshal(text, &c.N); err != nil {
		return err
	}
	c.Known = true
	return nil
}

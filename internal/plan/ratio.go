package plan

import (
	"fmt"
	"math"
	"time"
)

// Ratio is work against what lies between it. Work is all work steps; Between
// is all other steps from the end of the first work step to the start of the
// last: rests, changes of exercise and switches of side. What comes before the
// first effort or after the last one, such as the rest after a block, is part
// of neither. Preview and check both go by it.
type Ratio struct{ Work, Between time.Duration }

// Ratio returns the ratio of a block, which counts from 1, or of the whole
// session for block 0.
func (p *Plan) Ratio(block int) Ratio {
	var r Ratio
	var since time.Duration // not work, since the last work step
	for _, s := range p.Steps {
		switch {
		case block > 0 && s.Block != block:
		case s.Kind == Work:
			if r.Work > 0 {
				r.Between += since
			}
			r.Work += s.Length
			since = 0
		default:
			since += s.Length
		}
	}
	return r
}

// Known reports whether there is a ratio: an effort, and time before another.
func (r Ratio) Known() bool { return r.Work > 0 && r.Between > 0 }

// Value returns the time between to one of work; 0 if there is no work.
func (r Ratio) Value() float64 {
	if r.Work == 0 {
		return 0
	}
	return float64(r.Between) / float64(r.Work)
}

// String writes the ratio as "1:4.9", rounded down to a tenth (to a hundredth below 0.1), so that what is
// shown as a limit has reached it; "–" if there is none.
func (r Ratio) String() string {
	if !r.Known() {
		return "–"
	}
	if v := r.Value(); v < 0.1 {
		return fmt.Sprintf("1:%.2f", math.Floor(100*v)/100)
	}
	return fmt.Sprintf("1:%.1f", math.Floor(10*r.Value())/10)
}

package strip

import (
	"math"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
)

// Part is a stretch and the cells it takes: From up to, not including, To.
type Part struct {
	Stretch
	From, To int
}

// Strip is a plan laid out in cells.
type Strip struct {
	Width  int
	Detail Detail // the finest at which the parts are as long as their time
	Parts  []Part // end to end, none empty; together Width cells
	Starts []int  // the cell in which each block of the plan starts
}

// Of lays a plan out in width cells. Every end of a part stands at the cell
// nearest to its time, or one further off if a short part would have no
// cell otherwise. If that does not suffice, stretches are joined until it
// does; if there is less than a cell for a block, the shortest vanish.
// There are no parts for width < 1.
func Of(p *plan.Plan, width int) *Strip {
	s := &Strip{Width: max(width, 0)}
	if width < 1 || p.Total <= 0 {
		return s
	}
	for s.Detail = Steps; ; s.Detail++ {
		stretches := Stretches(p, s.Detail)
		ends, ok := spread(stretches, p.Total, width)
		if !ok && s.Detail < Blocks {
			continue
		}
		if !ok {
			ends = nearest(stretches, p.Total, width)
		}
		s.cut(stretches, ends)
		break
	}
	for _, b := range p.Blocks {
		s.Starts = append(s.Starts, s.Place(b.Start))
	}
	return s
}

// nearest returns the cell nearest to the end of each stretch. Rounding the
// ends, not the lengths, makes the parts sum to the width and keeps each in
// its place.
func nearest(stretches []Stretch, total time.Duration, width int) []int {
	ends := make([]int, len(stretches))
	for i, st := range stretches {
		ends[i] = int(math.Round(exact(st.End, total, width)))
	}
	return ends
}

// exact returns where on the strip a session time stands, in cells.
func exact(t, total time.Duration, width int) float64 {
	return float64(t) / float64(total) * float64(width)
}

// spread returns the ends of the stretches with at least one cell for each.
// ok is false if an end would be more than a cell off its nearest one.
func spread(stretches []Stretch, total time.Duration, width int) (ends []int, ok bool) {
	near := nearest(stretches, total, width)
	ends = make([]int, len(near))
	last := 0
	for i, n := range near {
		ends[i] = max(n, last+1)
		last = ends[i]
	}
	limit := width
	for i := len(ends) - 1; i >= 0; i-- {
		ends[i] = min(ends[i], limit)
		limit = ends[i] - 1
		if d := ends[i] - near[i]; d < -1 || d > 1 || ends[i] < i+1 {
			return nil, false
		}
	}
	return ends, true
}

// cut makes the parts, leaving out those with no cell.
func (s *Strip) cut(stretches []Stretch, ends []int) {
	from := 0
	for i, st := range stretches {
		if ends[i] > from {
			s.Parts = append(s.Parts, Part{Stretch: st, From: from, To: ends[i]})
			from = ends[i]
		}
	}
}

// Place returns the cell in which session time t stands, 0 to Width-1. It
// never goes back while t goes on, and stands in the part that t belongs to.
func (s *Strip) Place(t time.Duration) int {
	place := 0
	for _, part := range s.Parts {
		if t < part.Start {
			break
		}
		share := float64(t-part.Start) / float64(part.End-part.Start)
		place = part.From + min(int(share*float64(part.To-part.From)), part.To-part.From-1)
	}
	return place
}

// marks are the characters of the kinds: they differ in height and density,
// and the Linux console's own font has them too.
var marks = map[plan.Kind][2]rune{
	plan.LeadIn: {'░', '.'},
	plan.Work:   {'█', '#'},
	plan.Switch: {'▀', '/'},
	plan.Change: {'▄', '+'},
	plan.Rest:   {'─', '-'},
}

// Mark returns the character that stands for a kind in a strip, one cell wide, and
// one of ASCII where that is not shown.
func Mark(k plan.Kind, shown safetext.Repertoire) rune {
	if m := marks[k]; !shown.Has(string(m[0])) {
		return m[1]
	}
	return marks[k][0]
}

// Text returns the part's cells as text.
func (p Part) Text(shown safetext.Repertoire) string {
	return strings.Repeat(string(Mark(p.Kind, shown)), p.To-p.From)
}

// Text returns the strip as text, Width cells wide.
func (s *Strip) Text(shown safetext.Repertoire) string {
	var b strings.Builder
	for _, p := range s.Parts {
		b.WriteString(p.Text(shown))
	}
	return b.String()
}

// Scale returns a line of Width cells to stand below the strip, with the
// number of each block below its first cell. A number that would touch the
// one before it is left out.
func (s *Strip) Scale() string {
	line := []byte(strings.Repeat(" ", s.Width))
	free := 0
	for i, at := range s.Starts {
		n := strconv.Itoa(i + 1)
		if at >= free && at+len(n) <= s.Width {
			copy(line[at:], n)
			free = at + len(n) + 1
		}
	}
	return string(line)
}

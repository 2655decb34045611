package measured

import "math"

// SymmetryLeastLow and SymmetryLeastHigh are the published bounds of the least
// detectable difference of a limb symmetry of single-leg hops, in points of a
// percentage: 1.96·√2 times the standard error, which is 2.6 to 4.1 (Knee 2019,
// PubMed 31431339). A hop passed predicts little, and distance flatters a knee
// (Sports Med 2020, PMC7018781).
const SymmetryLeastLow, SymmetryLeastHigh = 7.2, 11.3

// Sides is the two sides of one exercise on the latest day that has both.
type Sides struct {
	Left, Right *Series
	Day         [2]*Day // of Left and of Right, of one date
	Percent     float64 // 100 × weaker / stronger mean
	Weaker      string  // left or right; empty if they are alike
	Error       float64 // standard error of Percent from the player's own tries; 0 if too few are known
}

// Pairs returns the sides of every exercise that was measured on both, on the
// latest day that counts on both. As with every change the first day is left
// out.
func Pairs(all []*Series) []Sides {
	var pairs []Sides
	for _, l := range all {
		for _, r := range all {
			if l.Side != "left" || r.Side != "right" || l.Measure == "time" || fold(l.Name) != fold(r.Name) || l.Measure != r.Measure || fold(l.Way) != fold(r.Way) {
				continue
			}
			if p, ok := pair(l, r); ok {
				pairs = append(pairs, p)
			}
		}
	}
	return pairs
}

// pair holds a left and a right series against each other.
func pair(l, r *Series) (Sides, bool) {
	left, _ := l.counting()
	right, _ := r.counting()
	for i := len(left) - 1; i >= 0; i-- {
		for _, d := range right {
			if d.Date == left[i].Date {
				return sides(l, r, left[i], d)
			}
		}
	}
	return Sides{}, false
}

func sides(l, r *Series, a, b *Day) (Sides, bool) {
	left, _ := a.Mean()
	right, _ := b.Mean()
	weak, strong := min(left, right), max(left, right)
	if strong <= 0 {
		return Sides{}, false
	}
	s := Sides{Left: l, Right: r, Day: [2]*Day{a, b}, Percent: 100 * weak / strong}
	switch {
	case left < right:
		s.Weaker = "left"
	case right < left:
		s.Weaker = "right"
	}
	if e := typical(l, r); e.Enough() && weak > 0 {
		relative := math.Hypot(e.SD/left/math.Sqrt(float64(len(a.Tries))), e.SD/right/math.Sqrt(float64(len(b.Tries))))
		s.Error = s.Percent * relative
	}
	return s, true
}

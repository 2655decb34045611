package report

import (
	"math"
	"strconv"
)

// Scale returns round figures, evenly apart, that hold low and high between
// their ends, about n steps of them; high is above low.
func Scale(low, high float64, n int) []float64 {
	raw := (high - low) / float64(max(1, n))
	power := math.Pow(10, math.Floor(math.Log10(raw)))
	step := power
	for _, m := range []float64{1, 2, 2.5, 5, 10} {
		if step = m * power; step >= raw*0.999 {
			break
		}
	}
	var at []float64
	first, last := math.Floor(low/step+1e-9), math.Ceil(high/step-1e-9)
	for i := first; i <= last; i++ {
		at = append(at, i*step)
	}
	return at
}

// Marks writes the figures of an axis, all with the decimals that the finest
// needs.
func Marks(at []float64) []string {
	decimals := 0
	for _, v := range at {
		for decimals < 3 && math.Abs(v*math.Pow10(decimals)-math.Round(v*math.Pow10(decimals))) > 1e-6 {
			decimals++
		}
	}
	marks := make([]string, len(at))
	for i, v := range at {
		if v == 0 {
			v = 0 // no minus
		}
		marks[i] = strconv.FormatFloat(v, 'f', decimals, 64)
	}
	return marks
}

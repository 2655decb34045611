package units

import "testing"

// TestPercent: whole percent, and decimals only where a whole one would be on
// another side of a limit.
func TestPercent(t *testing.T) {
	for _, c := range []struct {
		done, of int
		limits   []float64
		want     string
	}{
		{9, 40, nil, "23 %"},
		{2, 9, []float64{.20}, "22 %"},
		{1, 5, []float64{.20}, "20 %"},
		{10, 49, []float64{.20}, "20.4 %"},
		{10, 51, []float64{.20}, "19.6 %"},
		{1001, 5000, []float64{.20}, "20.02 %"},
		{43, 48, []float64{.90}, "89.6 %"},
		{29, 100, []float64{.29}, "29 %"},
		{1, 8, nil, "13 %"},
		{1, 8, []float64{.125}, "12.5 %"},
		{0, 7, nil, "0 %"},
		{1, 300, nil, "0.3 %"},
		{299, 300, nil, "99.7 %"},
		{300, 300, nil, "100 %"},
		{5, 4, []float64{.90}, "125 %"},
	} {
		if got := Percent(float64(c.done)/float64(c.of), c.limits...); got != c.want {
			t.Errorf("%d of %d with limits %v: %s, want %s", c.done, c.of, c.limits, got, c.want)
		}
	}
}

package review

import (
	"math"
	"slices"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

// The quantiles are those that gonum gives of the sorted figures. Its LinInterp
// counts from 1/n, ours from 0 as spreadsheets do, so that the median is held
// against the middle of the sorted figures and the quartiles against gonum on
// the points that both have.
func TestDeviationsAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tenths := rapid.SliceOfN(rapid.IntRange(-300, 3000), 1, 60).Draw(t, "tenths of a second")
		var d, a, b Deviations
		x := make([]float64, len(tenths))
		for i, n := range tenths {
			x[i] = float64(n) / 10
			d.Add(time.Duration(n) * Resolution)
			if i%2 == 0 {
				a.Add(time.Duration(n) * Resolution)
			} else {
				b.Add(time.Duration(n) * Resolution)
			}
		}
		a.merge(&b)
		slices.Sort(x)
		n := len(x)
		want := (stat.Quantile(.5, stat.Empirical, x, nil) + x[n/2]) / 2
		got, ok := d.Median()
		if !ok || math.Abs(got.Seconds()-want) > 1e-6 {
			t.Fatalf("median %v of %v, want %v", got, x, want)
		}
		if m, _ := a.Median(); m != got {
			t.Fatalf("merged %v, at once %v", m, got)
		}
		if n%4 == 1 && n > 1 { // the quartiles fall on figures
			first, third, _ := d.Middle()
			if first.Seconds() != x[(n-1)/4] || third.Seconds() != x[3*(n-1)/4] {
				t.Fatalf("quartiles %v, %v of %v", first, third, x)
			}
		}
	})
}

func TestDeviationsOfNone(t *testing.T) {
	var d Deviations
	if _, ok := d.Median(); ok {
		t.Error("a median of nothing")
	}
	if _, _, ok := d.Middle(); ok {
		t.Error("quartiles of nothing")
	}
}

package trainingload

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s = %v, want %v ± %v", what, got, want, within)
	}
}

// The week is worked out by hand from Foster, Med Sci Sports Exerc
// 1998;30:1164–1168.
func TestWeek(t *testing.T) {
	daily := [Days]float64{480, 0, 360, 0, 520, 150, 0}
	w := WeekOf(daily)
	m, ok := w.Monotony()
	s, _ := w.Strain()
	if !ok {
		t.Fatal("no monotony")
	}
	near(t, "total", w.Total, 1510, 0)
	near(t, "mean", w.Mean, 215.714, 5e-4)
	near(t, "SD", w.SD, 233.513, 1e-3)
	near(t, "monotony", m, 0.9238, 5e-5)
	near(t, "strain", s, 1394.90, 5e-3)

	// With n below the line, as the doc comment of Week says.
	population := math.Sqrt(stat.PopVariance(daily[:], nil))
	near(t, "SD(n)", population, 216.192, 5e-4)
	near(t, "monotony with SD(n)", w.Mean/population, 0.9978, 5e-5)
	near(t, "strain with SD(n)", w.Total*w.Mean/population, 1506.67, 5e-3)
	near(t, "ratio of the two", w.SD/population, math.Sqrt(7./6), 1e-12)
}

// Table 1 of a review of resistance-training monitoring in BMJ Military
// Health: mean 790, SD 897, monotony 0.88.
func TestMonotonyPublished(t *testing.T) {
	m, _ := Week{Total: 7 * 790, Mean: 790, SD: 897}.Monotony()
	near(t, "monotony", m, 0.88, 5e-3)
}

func TestWeekWithoutSpread(t *testing.T) {
	for _, load := range []float64{0, 100, 0.1, 1e9 / 3} {
		w := WeekOf([Days]float64{load, load, load, load, load, load, load})
		if m, ok := w.Monotony(); ok || m != 0 {
			t.Errorf("seven days of %v have a monotony of %v", load, m)
		}
		if s, ok := w.Strain(); ok || s != 0 {
			t.Errorf("seven days of %v have a strain of %v", load, s)
		}
	}
}

func TestWeekAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var daily [Days]float64
		for i := range daily {
			daily[i] = rapid.Float64Range(0, 1500).Draw(t, "load")
		}
		w := WeekOf(daily)
		mean, sd := stat.MeanStdDev(daily[:], nil)
		if math.Abs(w.Mean-mean) > 1e-9 || math.Abs(w.SD-sd) > 1e-9 {
			t.Fatalf("mean %v, SD %v; gonum says %v, %v", w.Mean, w.SD, mean, sd)
		}
	})
}

// The series stands in the tests of an open R package; the formula is that of
// Williams et al., Br J Sports Med 2017;51:209–210.
func TestAverage(t *testing.T) {
	for span, want := range map[int]float64{ShortSpan: 47.3303, LongSpan: 37.8720} {
		a := NewAverage(span)
		got := 0.0
		for day := range 28 {
			load := 30.0
			if day >= 21 {
				load = 50
			}
			got = a.Add(load)
		}
		near(t, "average", got, want, 5e-5)
	}
}

// The average is the weighted mean of all days, the weights falling by 1−λ a
// day, and the first day standing for all before it.
func TestAverageAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		loads := rapid.SliceOfN(rapid.Float64Range(0, 1500), 1, 60).Draw(t, "loads")
		span := rapid.IntRange(1, 60).Draw(t, "span")
		lambda := 2 / float64(span+1)
		a := NewAverage(span)
		weights := make([]float64, len(loads))
		got := 0.0
		for i, l := range loads {
			got = a.Add(l)
			weights[i] = lambda * math.Pow(1-lambda, float64(len(loads)-1-i))
		}
		weights[0] = math.Pow(1-lambda, float64(len(loads)-1))
		if want := stat.Mean(loads, weights); math.Abs(got-want) > 1e-6 {
			t.Fatalf("average %v, gonum says %v", got, want)
		}
	})
}

func TestSession(t *testing.T) {
	// RPE 6 of 80 minutes, by Foster et al., J Strength Cond Res 2001;15:109–115.
	near(t, "load", Session(6, 80*time.Minute), 480, 0)
	near(t, "load of no effort", Session(0, time.Hour), 0, 0)
}

func TestRecovery(t *testing.T) {
	zone, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Skip("no time zones here:", err)
	}
	// The night to 29 March 2026 is an hour short.
	last := time.Date(2026, 3, 28, 18, 0, 0, 0, zone)
	r := RecoveryFrom(last, last.Add(5*time.Hour), EarliestAfter, FullAfter)
	if r.Since != 5*time.Hour {
		t.Errorf("since %v", r.Since)
	}
	if want := time.Date(2026, 3, 30, 19, 0, 0, 0, zone); !r.Earliest.Equal(want) {
		t.Errorf("48 h are up at %v, want %v", r.Earliest, want)
	}
	if want := time.Date(2026, 3, 31, 19, 0, 0, 0, zone); !r.Full.Equal(want) {
		t.Errorf("72 h are up at %v, want %v", r.Full, want)
	}
}

package measured

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"coldfloor/internal/units"
)

// series is the tries of some days, a week apart.
func series(days ...[]float64) *Series {
	s := &Series{Name: "Standing long jump", Measure: "distance", Side: "both"}
	for i, tries := range days {
		s.Days = append(s.Days, Day{Date: units.Date(20000 + 7*i), Tries: tries})
	}
	return s
}

func near(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if math.Abs(got-want) > within {
		t.Errorf("%s: %v, want %v within %v", what, got, want, within)
	}
}

// Three sets of three trials from the manual of an open R package on
// reliability: the pooled SD within them is 4.000. The day before them is
// learning and does not count.
func TestTypicalError(t *testing.T) {
	s := series([]float64{100, 300, 200}, []float64{250, 258, 252}, []float64{279, 270, 277}, []float64{218, 213, 218})
	e := s.Typical()
	near(t, "pooled SD", e.SD, 4.000, 5e-4)
	// Between them the means differ by an SD of 29.816, a fifth of which, 5.963, is
	// the smallest worthwhile change between people (Hopkins): one player's own
	// tries cannot give it.
	var means []float64
	for i := range s.Days[1:] {
		m, _ := s.Days[i+1].Mean()
		means = append(means, m)
	}
	near(t, "SD between", stat.StdDev(means, nil), 29.816, 5e-4)
	near(t, "a fifth of it", .2*stat.StdDev(means, nil), 5.963, 5e-4)
	if e.Freedom != 6 || !e.Enough() || e.Low >= e.SD || e.High <= e.SD {
		t.Errorf("got %+v", e)
	}
}

// Hopkins, Sports Med 2000;30:1–15: with a typical error of 4.8 cm the least
// detectable change is 13.30 cm of two single tries at 95 %, and 7.68 cm of two
// means of three.
func TestLeast(t *testing.T) {
	near(t, "single tries", Least(4.8, 1, 1), 13.30, 5e-3)
	near(t, "means of three", Least(4.8, 3, 3), 7.68, 5e-3)
}

// A change of 6 with a typical error of 3 and a smallest worthwhile change of
// 2, of single tries: error of the change 4.243, chances 0.827, 0.143, 0.030
// (computed from the normal distribution, as Hopkins does).
func TestChances(t *testing.T) {
	near(t, "error of the change", spread(3, 1, 1), 4.243, 5e-4)
	c := chances(6, spread(3, 1, 1), 2)
	near(t, "more", c.More, .827, 5e-4)
	near(t, "trivial", c.Trivial, .143, 5e-4)
	near(t, "less", c.Less, .030, 5e-4)
}

// A standard error of 2.6 to 4.1 points makes 7.2 to 11.3 the least difference
// (Knee 2019, PubMed 31431339).
func TestSymmetryError(t *testing.T) {
	near(t, "low", z95*math.Sqrt2*2.6, SymmetryLeastLow, .06)
	near(t, "high", z95*math.Sqrt2*4.1, SymmetryLeastHigh, .07)
}

// Marin-Jimenez et al., Eur J Sport Sci 2024: the retest of untaught adults
// differs by 12.14 ± 14.46 cm, a typical error of 14.46/√2 = 10.22; the first
// day counts for nothing.
func TestFirstDayCountsForNothing(t *testing.T) {
	near(t, "typical error of the first retest", 14.46/math.Sqrt2, 10.22, 5e-3)
	s := series([]float64{180, 185, 181}, []float64{200, 202, 201}, []float64{205, 206, 207})
	c, lack := s.Change()
	if lack != "" || c.From != &s.Days[1] || c.By != 5 {
		t.Errorf("got %+v, %q", c, lack)
	}
}

func TestTooLittle(t *testing.T) {
	three := []float64{200, 202, 201}
	for want, s := range map[Lack]*Series{
		NoTries:   series(nil),
		FirstDay:  series(three),
		SecondDay: series(three, three),
		FewTries:  series(three, []float64{200}, []float64{210, 211}),
		"":        series(three, three, three),
	} {
		if _, got := s.Change(); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestAgainstGonum(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		days := rapid.SliceOfN(rapid.SliceOfN(rapid.Float64Range(10, 300), 1, 6), 3, 8).Draw(rt, "days")
		s := series(days...)
		squares, free := 0.0, 0
		for _, d := range days[1:] {
			if len(d) > 1 {
				squares += stat.Variance(d, nil) * float64(len(d)-1)
			}
			free += len(d) - 1
		}
		e := s.Typical()
		if e.Freedom != free {
			rt.Fatalf("freedom %d, want %d", e.Freedom, free)
		}
		if free == 0 {
			return
		}
		want := math.Sqrt(squares / float64(free))
		if math.Abs(e.SD-want) > 1e-9*(1+want) {
			rt.Fatalf("SD %v, want %v", e.SD, want)
		}
		by, err, least := rapid.Float64Range(-30, 30).Draw(rt, "by"), rapid.Float64Range(.1, 20).Draw(rt, "err"), rapid.Float64Range(.1, 10).Draw(rt, "least")
		n := distuv.Normal{Mu: by, Sigma: err}
		c := chances(by, err, least)
		if math.Abs(c.More-n.Survival(least)) > 1e-12 || math.Abs(c.Less-n.CDF(-least)) > 1e-12 || math.Abs(c.More+c.Less+c.Trivial-1) > 1e-12 {
			rt.Fatalf("chances %+v of %v ± %v beyond %v", c, by, err, least)
		}
	})
	for n := MinFreedom; n <= 200; n++ {
		x := distuv.ChiSquared{K: float64(n)}
		for p, z := range map[float64]float64{.025: -z95, .975: z95} {
			if want, got := x.Quantile(p)/float64(n), meanSquare(n, z); math.Abs(got-want) > .08*want {
				t.Errorf("%d degrees of freedom: %v at %v, want %v", n, got, p, want)
			}
		}
	}
}

func TestOf(t *testing.T) {
	v := func(x float64) *float64 { return &x }
	on := func(day int) time.Time { return time.Date(2026, 12, day, 18, 0, 0, 0, time.UTC) }
	all := Of([]Result{
		{Name: "Wall jump", Measure: "height", Way: "wall, fingertips", Side: "both", At: on(2), Value: v(240)},
		{Name: "wall  jump", Measure: "height", Way: "Wall, fingertips", Side: "both", At: on(1), Value: v(238), Practice: true},
		{Name: "Wall jump", Measure: "height", Way: "tape", Side: "both", At: on(2), Value: v(300)},
		{Name: "Wall jump", Measure: "height", Way: "wall, fingertips", Side: "both", At: on(2)},
	})
	if len(all) != 2 || all[0].Way != "tape" || len(all[1].Days) != 2 {
		t.Fatalf("got %d series", len(all))
	}
	d := all[1].Days[1]
	if all[1].Days[0].Practice[0] != 238 || len(d.Tries) != 1 || d.LeftOut != 1 {
		t.Errorf("got %+v", all[1].Days)
	}
	if best, ok := all[1].Best(&d); !ok || best != 240 {
		t.Errorf("best %v %v", best, ok)
	}
}

func TestSides(t *testing.T) {
	l := series([]float64{140, 150}, []float64{150, 152, 151}, []float64{150, 152, 151})
	r := series([]float64{140, 150}, []float64{160, 162, 161}, []float64{170, 172, 171})
	l.Side, r.Side = "left", "right"
	p := Pairs([]*Series{l, r})
	if len(p) != 1 || p[0].Weaker != "left" {
		t.Fatalf("got %+v", p)
	}
	near(t, "percent", p[0].Percent, 100*151./171, 1e-9)
	near(t, "error", p[0].Error, p[0].Percent*math.Hypot(1/151./math.Sqrt(3), 1/171./math.Sqrt(3)), 1e-9)
}

package pace

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat"
	"pgregory.net/rapid"

	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// hand is a session whose squats end by hand, and whose hops by the clock.
const hand = `coldfloor: 1
title: Hall
blocks:
  - title: Up
    rounds: 4
    rest: 60s
    exercises:
      - {name: Split squat, reps_per_side: 5, tempo: 3-1-1, finish: hand}
      - {name: Pogo hops, reps: 10, rep: 1s}
`

func planOf(t testing.TB, text string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("hall.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// squat is a set of ten reps of so many seconds that the player ended.
func squat(rep float64) journal.Set {
	return journal.Set{Name: "Split  squat", Outcome: "done", End: "finish", ByHand: true, PlannedS: 50, TakenS: 10 * rep, Reps: 10, Planned: 10}
}

func run(id int, sets ...journal.Set) *journal.Run {
	return &journal.Run{ID: fmt.Sprint(id), Sets: sets}
}

// reps returns what is known of every exercise: by name, in order of the time
// prescribed, and as written before the easier variant.
func reps(t *Table) []Rep {
	var all []Rep
	for k, e := range t.exercises {
		if r := e.rep(k); r.Sets > 0 {
			all = append(all, r)
		}
	}
	easier := func(r Rep) int {
		if r.Easier {
			return 1
		}
		return 0
	}
	slices.SortFunc(all, func(a, b Rep) int {
		return cmp.Or(cmp.Compare(fold(a.Name), fold(b.Name)), cmp.Compare(a.Prescribed, b.Prescribed), easier(a)-easier(b))
	})
	return all
}

func TestRep(t *testing.T) {
	early := squat(1)
	early.Name, early.ByHand, early.PlannedS = "Pogo hops", false, 10
	clock := early
	clock.Paced = true
	partial, timed, easier := squat(9), squat(9), squat(8)
	partial.Outcome = "partial"
	timed.Planned, timed.Reps = 0, 0
	easier.Easier = true
	withdrawn, rehearsed := run(8, squat(1)), run(9, squat(1))
	withdrawn.Withdrawn = true
	rehearsed.Started = &journal.Started{Speed: 60}
	table := Of([]*journal.Run{run(1, squat(4), squat(5), partial, timed), run(2, squat(6), early, clock), run(3, squat(7), squat(100), easier, squat(5)), withdrawn, rehearsed})
	want := []Rep{
		{Name: "Pogo hops", Prescribed: time.Second, Median: time.Second, First: time.Second, Third: time.Second, Sets: 1, Sessions: 1},
		{Name: "Split  squat", Prescribed: 5 * time.Second, Median: 5500 * time.Millisecond, First: 5 * time.Second, Third: 6750 * time.Millisecond, Sets: 6, Sessions: 3},
		{Name: "Split  squat", Easier: true, Prescribed: 5 * time.Second, Median: 8 * time.Second, First: 8 * time.Second, Third: 8 * time.Second, Sets: 1, Sessions: 1},
	}
	if got := reps(table); !slices.Equal(got, want) {
		t.Errorf("got %+v\nwant %+v", got, want)
	}
	if !want[1].Enough() || want[0].Enough() {
		t.Error("six sets in three sessions are enough, one is not")
	}
}

func TestMedianAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.Float64Range(0.3, 20), 1, 60).Draw(t, "lengths")
		slices.Sort(x)
		n := len(x)
		want := (stat.Quantile(.5, stat.Empirical, x, nil) + x[n/2]) / 2
		if got := quantile(x, .5); math.Abs(got-want) > 1e-9 {
			t.Fatalf("median %v, want %v", got, want)
		}
	})
}

// With reps that always last the same, the length is exact.
func TestLengthOfASteadyPlayer(t *testing.T) {
	p := planOf(t, hand)
	var runs []*journal.Run
	for i := range 3 {
		runs = append(runs, run(i, squat(6), squat(6)))
	}
	e := Of(runs).Length(p)
	want := p.Total + 4*10*time.Second // four sets of ten reps, a second longer each
	if e.Yours != want || e.Low != want || e.High != want || e.Sets != 6 || e.Sessions != 3 {
		t.Errorf("got %+v, want %v", e, want)
	}
	if len(e.Lacking) != 1 || e.Lacking[0].Name != "Pogo hops" {
		t.Errorf("lacking: %+v", e.Lacking)
	}
	if got := e.Line(); !strings.Contains(got, "from 6 sets that you ended, in 3 sessions; at the prescribed pace: Pogo hops") {
		t.Errorf("the line reads %q", got)
	}
}

// A set that ends by the clock never lasts longer than it is prescribed.
func TestClockBoundsASet(t *testing.T) {
	p := planOf(t, hand)
	hop := func(rep float64, paced bool) journal.Set {
		return journal.Set{Name: "pogo hops", Outcome: "done", PlannedS: 10, TakenS: 10 * rep, Reps: 10, Planned: 10, Paced: paced}
	}
	var runs []*journal.Run
	for i := range 4 {
		runs = append(runs, run(i, hop(1, true), hop(1, true), hop(1, true), hop(.8, false), hop(.8, false)))
	}
	e := Of(runs).Length(p)
	if e.Yours > e.High || e.High > p.Total || e.Low >= e.Yours || e.Low < p.Total-8*time.Second {
		t.Errorf("got %+v of %v", e, p.Total)
	}
}

func TestTooLittle(t *testing.T) {
	p := planOf(t, hand)
	e := Of([]*journal.Run{run(1, squat(4), squat(4), squat(4), squat(4), squat(4), squat(4), squat(4))}).Length(p)
	if e.Enough() || e.Yours != p.Total || e.Low != p.Total || e.High != p.Total {
		t.Errorf("got %+v", e)
	}
	if got, want := e.Line(), "your length: too little to tell, with 7 sets that you ended, in 1 session, of Split  squat; it takes 6 sets of an exercise, in 3 sessions"; got != want {
		t.Errorf("the line reads %q", got)
	}
	if none := Of(nil).Length(p); none.Enough() || !strings.Contains(none.Line(), "unknown") {
		t.Errorf("got %q", none.Line())
	}
}

// One slip of the key changes little.
func TestLengthIsRobust(t *testing.T) {
	p := planOf(t, hand)
	var runs []*journal.Run
	for i := range 10 {
		runs = append(runs, run(i, squat(6), squat(6)))
	}
	runs[3].Sets[0].TakenS = 0.2
	if e, want := Of(runs).Length(p), p.Total+40*time.Second; e.Yours < want-2*time.Second || e.Yours > want+2*time.Second {
		t.Errorf("yours is %v, want %v within 2 s", e.Yours, want)
	}
}

// A few slow sets make the mean of sets longer than their median. The length
// and its range come from the same made-up sessions all the same.
func TestLengthLiesWithinItsRange(t *testing.T) {
	p := planOf(t, hand)
	skewed := []*journal.Run{run(1, squat(4), squat(4), squat(4), squat(20)), run(2, squat(4), squat(4), squat(22)), run(3, squat(4), squat(4), squat(18))}
	if e := Of(skewed).Length(p); e.Yours <= e.Low || e.Yours >= e.High {
		t.Errorf("%v lies outside %v to %v", e.Yours, e.Low, e.High)
	}
	rapid.Check(t, func(t *rapid.T) {
		var runs []*journal.Run
		for i := range rapid.IntRange(3, 8).Draw(t, "sessions") {
			r := run(i)
			for _, rep := range rapid.SliceOfN(rapid.Float64Range(.3, 60), 2, 8).Draw(t, "reps") {
				r.Sets = append(r.Sets, squat(rep))
			}
			runs = append(runs, r)
		}
		if e := Of(runs).Length(p); e.Yours < e.Low || e.Yours > e.High {
			t.Fatalf("%v lies outside %v to %v", e.Yours, e.Low, e.High)
		}
	})
}

// The range holds about as many sessions to come as it says. The player is made
// up: days differ by 6 % and the sets of a day by 8 %, both log-normal.
func TestRangeHoldsWhatItSays(t *testing.T) {
	p := planOf(t, hand)
	for _, c := range []struct {
		days, low, high int // per cent of sessions that the range may hold
	}{
		{3, 62, 92}, {6, 70, 90}, {15, 74, 87}, {40, 75, 86},
	} {
		rnd := rand.New(rand.NewPCG(uint64(c.days), 5))
		const trials = 300
		held := 0
		for range trials {
			var runs []*journal.Run
			for i := range c.days {
				runs = append(runs, run(i, day(rnd)...))
			}
			e := Of(runs).Length(p)
			next := p.Total.Seconds()
			for _, s := range day(rnd) {
				next += s.TakenS - s.PlannedS
			}
			if d := time.Duration(next * float64(time.Second)); d >= e.Low && d <= e.High {
				held++
			}
		}
		percent := held * 100 / trials
		t.Logf("%d sessions of four sets: the range holds %d %% of the sessions to come", c.days, percent)
		if percent < c.low || percent > c.high {
			t.Errorf("%d sessions: the range holds %d %%, want %d to %d", c.days, percent, c.low, c.high)
		}
	}
}

// day makes a session of four sets up.
func day(rnd *rand.Rand) []journal.Set {
	pace := 5.5 * math.Exp(.06*rnd.NormFloat64())
	var sets []journal.Set
	for range 4 {
		sets = append(sets, squat(pace*math.Exp(.08*rnd.NormFloat64())))
	}
	return sets
}

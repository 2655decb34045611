package plan_test

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// called returns a plan of one timed set in which so many directions are
// called.
func called(directions int, every sessions.Interval, length time.Duration) *plan.Plan {
	e := sessions.Exercise{Name: "Footwork", Time: length, Rep: time.Second, CallEvery: every}
	for d := range directions {
		e.Calls = append(e.Calls, string(rune('a'+d)))
	}
	return plan.Of(&sessions.Session{Title: "T", Blocks: []sessions.Block{{Title: "B", Rounds: 1, Exercises: []sessions.Exercise{e}}}})
}

// drawCalled draws such a plan and its calls.
func drawCalled(t *rapid.T) (p *plan.Plan, every sessions.Interval, calls []plan.Call, seed uint64) {
	least := time.Duration(rapid.Int64Range(1000, 4000).Draw(t, "least, ms")) * time.Millisecond
	every = sessions.Interval{Least: least, Most: least + time.Duration(rapid.Int64Range(0, 3000).Draw(t, "more, ms"))*time.Millisecond}
	length := time.Duration(rapid.Int64Range(1, 600).Draw(t, "length, s")) * time.Second
	p = called(rapid.IntRange(2, sessions.MaxCalls).Draw(t, "directions"), every, length)
	seed = rapid.Uint64().Draw(t, "seed")
	return p, every, slices.Collect(p.Calls(0, seed, p.Steps[0].Length)), seed
}

// "the first one interval after the start and none in the last second"
func TestCallsComeOneIntervalApart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, every, calls, _ := drawCalled(t)
		end := p.Steps[0].Length - time.Second
		before := time.Duration(0)
		for _, c := range calls {
			if gap := c.At - before; gap < every.Least || gap > every.Most {
				t.Fatalf("called %v after the one before, every %v", gap, every)
			}
			if c.At > end {
				t.Fatalf("called at %v of %v", c.At, p.Steps[0].Length)
			}
			before = c.At
		}
		if before+every.Most < end {
			t.Fatalf("nothing is called from %v to %v", before, end)
		}
	})
}

// "shuffled bags that hold each … twice", "never the same three times running"
func TestCallsComeFromBags(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _, calls, _ := drawCalled(t)
		directions := len(p.Exercise(0).Calls)
		for i := range calls {
			if i >= 2 && calls[i].Direction == calls[i-1].Direction && calls[i].Direction == calls[i-2].Direction {
				t.Fatalf("%d is called three times running", calls[i].Direction)
			}
		}
		for bag := range slices.Chunk(calls, 2*directions) {
			seen := make([]int, directions)
			for _, c := range bag {
				if seen[c.Direction]++; seen[c.Direction] > 2 {
					t.Fatalf("%d is called more than twice in a bag", c.Direction)
				}
			}
			if len(bag) == 2*directions && slices.Min(seen) != 2 {
				t.Fatalf("a bag holds %v", seen)
			}
		}
	})
}

// A session can be done again by its seed, and a set that is made longer goes
// on as it began.
func TestCallsFollowTheirSeed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _, calls, seed := drawCalled(t)
		length := p.Steps[0].Length
		if again := slices.Collect(p.Calls(0, seed, length)); !slices.Equal(again, calls) {
			t.Fatalf("another order the second time")
		}
		longer := slices.Collect(p.Calls(0, seed, length+15*time.Second))
		if len(longer) < len(calls) || !slices.Equal(longer[:len(calls)], calls) {
			t.Fatalf("a longer set begins otherwise")
		}
		at := time.Duration(rapid.Int64Range(0, int64(length)).Draw(t, "at"))
		got, ok := p.CallAt(0, seed, length, at)
		i := slices.IndexFunc(calls, func(c plan.Call) bool { return c.At > at })
		if i < 0 {
			i = len(calls)
		}
		if ok != (i > 0) || ok && got != calls[i-1] {
			t.Fatalf("at %v %v, %v is called", at, got, ok)
		}
	})
}

// Over many seeds every direction comes first about as often: PCG's shuffle is
// even. 6,000 draws of six directions: 1,000 each, standard deviation 28.9, so
// 5 of them are 145.
func TestCallsAreEven(t *testing.T) {
	p := called(6, sessions.Interval{Least: 3 * time.Second, Most: 3 * time.Second}, 20*time.Second)
	first := make([]int, 6)
	for seed := range uint64(6000) {
		c, _ := p.CallAt(0, seed, 20*time.Second, 3*time.Second)
		first[c.Direction]++
	}
	for d, n := range first {
		if n < 855 || n > 1145 {
			t.Errorf("direction %d comes first %d times of 6000", d, n)
		}
	}
}

// The plan is as long with calls as without.
func TestCallsLeaveTheLengthAlone(t *testing.T) {
	p := called(2, sessions.Interval{Least: 2 * time.Second, Most: 3 * time.Second}, 20*time.Second)
	if p.Total != 20*time.Second || len(p.Steps) != 1 || !p.HasCalls() {
		t.Errorf("%v in %d steps", p.Total, len(p.Steps))
	}
}

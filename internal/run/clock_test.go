package run

import (
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
)

// awake is a clock whose monotonic reading goes on in sleep: the wall clock then
// only tells what it was set to.
type awake struct{ clock }

func (*awake) CountsSleep() bool { return true }

// The wall clock is set an hour back, or on, in a set and in a rest: no length
// changes, the run is not paused, and the moments stand in their order.
func TestWallClockSetDuringARun(t *testing.T) {
	for name, by := range map[string]time.Duration{"an hour back": -time.Hour, "an hour on": time.Hour} {
		t.Run(name, func(t *testing.T) {
			j := openTemp(t)
			p := testPlan(t)
			c := &awake{*newClock()}
			o := engine.Options{AllPaced: true}
			rec, err := Begin(j, p, Opening{Options: o}, c)
			if err != nil {
				t.Fatal(err)
			}
			a := Bare(p, o, c, rec)
			a.Do(engine.Start)
			for at := range p.Total / time.Second {
				if at == 8 || at == 20 { // 5 s to 15 s is the first set, its rest 15 s to 45 s
					c.start = c.start.Add(by)
				}
				c.mono += time.Second
				if away := a.Tick(); away != 0 {
					t.Fatalf("taken for %v away", away)
				}
			}
			if err := rec.Close(); err != nil {
				t.Fatal(err)
			}
			r := only(t, j)
			if r.State != journal.Complete || r.Elapsed != p.Total || r.Rests[0].TakenS != 30 || r.Sets[0].TakenS != 10 {
				t.Errorf("%s after %v, rest %+v, set %+v", r.State, r.Elapsed, r.Rests[0], r.Sets[0])
			}
			for i := 1; i < len(r.Sets); i++ {
				if !r.Sets[i].At.After(r.Sets[i-1].At) {
					t.Errorf("set %d at %v, the one before at %v", i, r.Sets[i].At, r.Sets[i-1].At)
				}
			}
		})
	}
}

// The machine's own clock counts sleep on this system, or says that it does not.
func TestSystemClockGoesOn(t *testing.T) {
	c := NewSystem(10)
	before := c.Mono()
	for end := time.Now().Add(time.Minute); c.Mono() < before+10*time.Millisecond; {
		if time.Now().After(end) {
			t.Fatal("it stands")
		}
	}
	t.Logf("it counts sleep: %v", c.CountsSleep())
	if c.Speed() != 10 || c.CountsSleep() != bootCountsSleep {
		t.Errorf("speed %g, counts sleep %v", c.Speed(), c.CountsSleep())
	}
}

// The machine's clock goes as fast as the one that Go reads, and never back.
func TestSystemClockKeepsTime(t *testing.T) {
	from, began := sinceBoot(), time.Now()
	last := from
	for time.Since(began) < 200*time.Millisecond {
		now := sinceBoot()
		if now < last {
			t.Fatalf("%v after %v", now, last)
		}
		last = now
	}
	if d := (last - from) - time.Since(began); d < -time.Minute || d > time.Minute { // a bound on a wrong unit alone
		t.Errorf("%v in %v", last-from, time.Since(began))
	}
	if last-from < 10*time.Millisecond {
		t.Errorf("it went on by %v in 200 ms", last-from)
	}
}

package run

import (
	"fmt"
	"strings"
	"testing"
	"time"
	_ "time/tzdata" // the zones, wherever the test runs

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/logbook"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
)

// moments brings a run to a moment of every kind.
var moments = map[string]func(r *rig){
	"lead-in": func(r *rig) { r.pass(2 * time.Second) },
	"work":    func(r *rig) { r.pass(8 * time.Second) },
	"rest":    func(r *rig) { r.pass(20 * time.Second) },
	"switch":  func(r *rig) { r.pass(92 * time.Second) },
	"change":  func(r *rig) { r.pass(102 * time.Second) },
	"by hand": func(r *rig) { r.pass(118 * time.Second) },
	"pause":   func(r *rig) { r.do(8*time.Second, engine.Pause); r.pass(5 * time.Second) },
	"count-in": func(r *rig) {
		r.do(8*time.Second, engine.Pause)
		r.do(5*time.Second, engine.Resume)
		r.pass(time.Second)
	},
	"questions": func(r *rig) { r.toEnd() },
}

// stepped runs a session whose wall clock is changed at a moment, rates it, and
// returns what the journal holds, and whether the run took it for being away.
func stepped(t *testing.T, c Clock, hand *clock, moment string, change func(*clock)) (*journal.Run, bool) {
	t.Helper()
	j := openTemp(t)
	p := testPlan(t)
	o := engine.Options{CountIn: countIn}
	rec, err := Begin(j, p, Opening{Options: o}, c)
	if err != nil {
		t.Fatal(err)
	}
	r := &rig{t, hand, rec, Bare(p, o, c, rec)}
	r.run.Do(engine.Start)
	moments[moment](r)
	change(hand)
	away := r.run.Tick() != 0
	r.toEnd()
	rec.Rate(journal.Rating{RPE: ptr(6.0)})
	r.close()
	return only(t, j), away
}

// told is what a log and a review tell of a run but for its moments.
func told(r *journal.Run) string {
	reviewer := review.New(review.Options{Now: r.End()})
	reviewer.Add(runs.Run{Run: r})
	s := reviewer.Squad().Players[0].Recent[0]
	rounds, _ := s.AllRounds()
	var b strings.Builder
	fmt.Fprintln(&b, r.State, r.Clock, rounds, s.Rest.Count, s.Rest.Prescribed, *r.Rating.RPE)
	for _, x := range r.Sets {
		fmt.Fprintln(&b, x.Place, x.Outcome, x.End, x.TakenS, x.Reps)
	}
	for _, x := range r.Rests {
		fmt.Fprintf(&b, "%v %s %.3f\n", x.Place, x.End, x.TakenS-x.PausedS)
	}
	return b.String()
}

// sane fails if a figure of a run is one that no run can have, or if a log shows
// one.
func sane(t *testing.T, r *journal.Run) {
	t.Helper()
	last := r.Start
	for _, s := range r.Sets {
		if s.At.Before(last) || s.TakenS < 0 || s.PausedS < 0 {
			t.Errorf("set %+v after %v", s, last)
		}
		last = s.At
	}
	for _, x := range r.Rests {
		if x.TakenS < x.PausedS || x.PausedS < 0 {
			t.Errorf("rest %+v", x)
		}
	}
	if r.Elapsed < r.Clock {
		t.Errorf("elapsed %v, on the session's clock %v", r.Elapsed, r.Clock)
	}
	live := func(string) bool { return false }
	if text := logbook.List([]*journal.Run{r}, live) + logbook.Show(r, live); strings.Contains(text, "-0:") || strings.Contains(text, "-1:") {
		t.Errorf("the log shows\n%s", text)
	}
}

// steps is how far a wall clock is set.
var steps = []time.Duration{time.Hour, -time.Hour, 24 * time.Hour, -24 * time.Hour}

// Where the machine's clock counts sleep, a wall clock that is set changes
// nothing, in whatever phase: what is logged is the same to the millisecond.
func TestClockSetInEveryPhase(t *testing.T) {
	for moment := range moments {
		plain := &awake{*newClock()}
		want, _ := stepped(t, plain, &plain.clock, moment, func(*clock) {})
		for _, by := range steps {
			t.Run(fmt.Sprintf("%s, %v", moment, by), func(t *testing.T) {
				c := &awake{*newClock()}
				got, away := stepped(t, c, &c.clock, moment, func(c *clock) { c.start = c.start.Add(by) })
				if away || got.Pauses != want.Pauses {
					t.Errorf("taken for away: %v, %d pauses, want %d", away, got.Pauses, want.Pauses)
				}
				if told(got) != told(want) || got.Elapsed != want.Elapsed || !got.Start.Equal(want.Start) || !got.End().Equal(want.End()) {
					t.Errorf("got\n%s%v from %v, want\n%s%v from %v", told(got), got.Elapsed, got.Start, told(want), want.Elapsed, want.Start)
				}
				sane(t, got)
			})
		}
	}
}

// Where it stands in sleep, setting the clock is taken for sleep while time
// counts: the run is paused, nothing is lost of it, and nothing runs back.
func TestClockSetOrSleptInEveryPhase(t *testing.T) {
	for moment := range moments {
		plain := newClock()
		want, _ := stepped(t, plain, plain, moment, func(*clock) {})
		for _, by := range steps {
			t.Run(fmt.Sprintf("%s, %v", moment, by), func(t *testing.T) {
				c := newClock()
				got, away := stepped(t, c, c, moment, func(c *clock) { c.start = c.start.Add(by) })
				if counts := moment != "pause" && moment != "questions"; away != counts {
					t.Errorf("taken for away: %v", away)
				}
				if told(got) != told(want) {
					t.Errorf("got\n%swant\n%s", told(got), told(want))
				}
				sane(t, got)
			})
		}
	}
}

// A zone that changes, and the end of summer time in the middle of a run, change
// what the clock on the wall shows and nothing else.
func TestClockSetToAnotherZone(t *testing.T) {
	berlin, err := time.LoadLocation("Europe/Berlin")
	if err != nil {
		t.Fatal(err)
	}
	for name, at := range map[string]time.Time{
		"end of summer time":       time.Date(2026, 10, 25, 0, 59, 0, 0, time.UTC), // 03:00 is 02:00 a minute into the run
		"beginning of summer time": time.Date(2026, 3, 29, 0, 59, 0, 0, time.UTC),
	} {
		t.Run(name, func(t *testing.T) {
			summer, all := &clock{start: at.In(berlin)}, &clock{start: at}
			got, away := stepped(t, summer, summer, "questions", func(*clock) {})
			want, _ := stepped(t, all, all, "questions", func(*clock) {})
			if away || told(got) != told(want) || got.Elapsed != want.Elapsed || !got.End().Equal(want.End()) {
				t.Errorf("away %v, got\n%swant\n%s", away, told(got), told(want))
			}
			sane(t, got)
			_, first := got.Sets[0].At.Zone()
			if _, last := got.Sets[len(got.Sets)-1].At.Zone(); first == last {
				t.Errorf("all sets at an offset of %d s", first)
			}
		})
	}
	for moment := range moments {
		c := newClock()
		got, away := stepped(t, c, c, moment, func(c *clock) { c.start = c.start.In(time.FixedZone("", -9*60*60)) })
		if away || got.Pauses > 1 {
			t.Errorf("a zone that changes in %s is taken for away", moment)
		}
		sane(t, got)
	}
}

// A clock that is set between two processes at a run: each set is there once,
// and nothing is counted below zero.
func TestClockSetBetweenTwoProcesses(t *testing.T) {
	for moment := range moments {
		if moment == "questions" {
			continue
		}
		for _, by := range steps {
			t.Run(fmt.Sprintf("%s, %v", moment, by), func(t *testing.T) {
				j, c := openTemp(t), newClock()
				r := newRig(t, j, c)
				r.run.Do(engine.Start)
				moments[moment](r)
				r.close() // the process is gone
				left, err := leftOver(j)
				if err != nil || len(left) != 1 {
					t.Fatalf("%v, %v", left, err)
				}
				re, err := Resume(left[0])
				if err != nil {
					t.Fatal(err)
				}
				c.start, c.mono = c.Wall().Add(by+time.Minute), 0
				o := re.Options
				o.CountIn, o.LeadIn, o.Into = countIn, re.leadIn(), re.passed(c.start)
				rec, err := GoOn(j, re, o, c)
				if err != nil {
					t.Fatal(err)
				}
				next := &rig{t, c, rec, Bare(re.Plan, o, c, rec)}
				next.run.Do(engine.Start)
				next.toEnd()
				next.close()
				got := only(t, j)
				if got.State != journal.Complete || len(got.Sets) != 6 || fmt.Sprint(got.RoundsDone()) != "[2 2]" {
					t.Errorf("%s with %d sets, rounds %v", got.State, len(got.Sets), got.RoundsDone())
				}
				for _, x := range got.Rests {
					if x.TakenS < x.PausedS || x.PausedS < 0 || x.TakenS-x.PausedS > x.PrescribedS {
						t.Errorf("rest %+v", x)
					}
				}
				if got.Elapsed < got.Clock || got.Elapsed > got.Clock+time.Minute {
					t.Errorf("elapsed %v, on the session's clock %v", got.Elapsed, got.Clock)
				}
			})
		}
	}
}

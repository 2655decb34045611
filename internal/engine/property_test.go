package engine_test

import (
	"fmt"
	"reflect"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions/sessionstest"
)

var actions = []engine.Action{
	engine.Start, engine.Finish, engine.Pause, engine.Resume, engine.More, engine.Back,
	engine.Repeat, engine.Skip, engine.Swap, engine.Gap,
}

// drawRun returns an engine over a random plan, and the events of a random
// sequence of actions and waits on it.
func drawRun(t *rapid.T) (*engine.Engine, []engine.Event, time.Duration) {
	e := engine.New(plan.Of(sessionstest.Draw(t)), engine.Options{
		CountIn: rapid.SampledFrom([]time.Duration{0, 3 * time.Second}).Draw(t, "count-in"),
		ByHand:  rapid.Bool().Draw(t, "by hand"),
	})
	events := e.Do(engine.Start, 0)
	now := time.Duration(0)
	for range rapid.IntRange(0, 30).Draw(t, "actions") {
		now += drawWait(t)
		events = append(events, e.Do(rapid.SampledFrom(actions).Draw(t, "action"), now)...)
	}
	return e, events, now
}

func drawWait(t *rapid.T) time.Duration {
	return time.Duration(rapid.IntRange(0, 90_000).Draw(t, "wait, ms")) * time.Millisecond
}

// toEnd drives a run to its end, whatever state it is in, with no more than
// resuming and ending what waits for a key.
func toEnd(t *rapid.T, e *engine.Engine, now time.Duration) []engine.Event {
	var events []engine.Event
	for range 3*len(e.Plan().Steps) + 3 {
		now += 10 * time.Hour
		events = append(events, e.Do(engine.Resume, now)...)
		now += 10 * time.Hour
		events = append(events, e.Advance(now)...)
		if e.View().Phase == engine.Over {
			return events
		}
		events = append(events, e.Do(engine.Finish, now)...)
	}
	t.Fatalf("no end in sight: %+v", e.View())
	return nil
}

func TestTimeNeverRunsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, events, now := drawRun(t)
		events = append(events, toEnd(t, e, now)...)
		for i := 1; i < len(events); i++ {
			if a, b := events[i-1], events[i]; b.Now < a.Now || b.Clock < a.Clock {
				t.Fatalf("%+v comes after %+v", b, a)
			}
		}
	})
}

func TestEveryStepThatBeganEndsOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, events, now := drawRun(t)
		events = append(events, toEnd(t, e, now)...)
		open := -1
		for _, ev := range events {
			switch ev.Kind {
			case engine.StepBegan:
				if open != -1 {
					t.Fatalf("step %d began within step %d", ev.Step, open)
				}
				open = ev.Step
			case engine.StepEnded:
				if open != ev.Step {
					t.Fatalf("step %d ended while %d was open", ev.Step, open)
				}
				open = -1
			case engine.Finished:
				if open != -1 {
					t.Fatalf("finished within step %d", open)
				}
			}
		}
		if last := events[len(events)-1]; last.Kind != engine.Finished {
			t.Fatalf("last event: %+v", last)
		}
	})
}

// TestUntouchedRunTakesThePlansTotal also holds every step to its planned
// start, and every set to done.
func TestUntouchedRunTakesThePlansTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		e := engine.New(p, engine.Options{AllPaced: true})
		origin := time.Duration(rapid.Int64Range(0, 1e15).Draw(t, "origin"))
		events := append(e.Do(engine.Start, origin), e.Advance(origin+p.Total)...)
		sets := 0
		for _, ev := range events {
			if ev.Kind == engine.StepBegan && (ev.Clock != p.Steps[ev.Step].Start || ev.Now != origin+ev.Clock) {
				t.Fatalf("step %d began at %v, planned %v", ev.Step, ev.Clock, p.Steps[ev.Step].Start)
			}
			if ev.Kind == engine.SetEnded {
				if r := ev.Set; r.Set != sets || r.Outcome != engine.Done || ev.Taken != r.Planned || r.Reps != p.Sets[sets].Reps {
					t.Fatalf("set %d: %+v %+v", sets, ev, r)
				}
				sets++
			}
		}
		last := events[len(events)-1]
		if last.Kind != engine.Finished || last.Clock != p.Total || last.Now != origin+p.Total {
			t.Fatalf("finished: %+v, planned total %v", last, p.Total)
		}
		if sets != len(p.Sets) {
			t.Fatalf("%d sets ended of %d", sets, len(p.Sets))
		}
	})
}

// TestOneLateAdvanceEqualsManySmall runs the same actions on two engines, one
// of which is told the time far more often.
func TestOneLateAdvanceEqualsManySmall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		o := engine.Options{CountIn: 3 * time.Second}
		late, often := engine.New(p, o), engine.New(p, o)
		var a, b []engine.Event
		now := time.Duration(0)
		for range rapid.IntRange(1, 20).Draw(t, "actions") {
			next := now + drawWait(t)
			for range rapid.IntRange(0, 20).Draw(t, "looks") {
				now += time.Duration(rapid.Int64Range(0, int64(next-now)).Draw(t, "look"))
				b = append(b, often.Advance(now)...)
			}
			now = next
			act := rapid.SampledFrom(actions).Draw(t, "action")
			a = append(a, late.Do(act, now)...)
			b = append(b, often.Do(act, now)...)
		}
		if !reflect.DeepEqual(a, b) || !reflect.DeepEqual(late.View(), often.View()) {
			t.Fatalf("late:\n%+v\noften:\n%+v", a, b)
		}
	})
}

// TestPauseChangesNothingButTheClock pauses an untouched run at random
// moments, and compares every event but the pauses by session time.
func TestPauseChangesNothingButTheClock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := plan.Of(sessionstest.Draw(t))
		o := engine.Options{AllPaced: true, CountIn: rapid.SampledFrom([]time.Duration{0, 2 * time.Second}).Draw(t, "count-in")}
		plain, paused := engine.New(p, o), engine.New(p, o)
		want := append(plain.Do(engine.Start, 0), plain.Advance(p.Total)...)
		got := paused.Do(engine.Start, 0)
		now := time.Duration(0)
		for range rapid.IntRange(1, 5).Draw(t, "pauses") {
			now += drawWait(t)
			got = append(got, paused.Do(engine.Pause, now)...)
			now += drawWait(t)
			got = append(got, paused.Do(engine.Resume, now)...)
		}
		got = append(got, paused.Advance(now+p.Total+time.Minute)...)
		if w, g := bySession(want), bySession(got); !reflect.DeepEqual(w, g) {
			t.Fatalf("want %v\n got %v", w, g)
		}
	})
}

// bySession describes events by session time, with pauses and halts left out.
func bySession(events []engine.Event) []string {
	var rows []string
	for _, ev := range events {
		switch ev.Kind {
		case engine.Paused, engine.Resumed, engine.CountIn:
			continue
		}
		rows = append(rows, fmt.Sprint(ev.Kind, ev.Clock, ev.Step, ev.Cause, ev.Taken))
	}
	return rows
}

func TestBackThenForwardReturns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, _, now := drawRun(t)
		before := e.View()
		if before.Phase == engine.Over || before.Step == 0 {
			t.Skip("nowhere to go back to")
		}
		e.Do(engine.Back, now)
		e.Do(engine.Skip, now)
		after := e.View()
		if after.Step != before.Step || after.Elapsed != 0 || after.Phase != engine.Running && after.Phase != engine.CountedIn {
			t.Fatalf("before %+v\nafter %+v", before, after)
		}
	})
}

// TestEveryRepIsToldOnce holds what the sets tell against the steps that ended.
func TestEveryRepIsToldOnce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, events, now := drawRun(t)
		events = append(events, toEnd(t, e, now)...)
		worked, told := map[int]int{}, map[int]int{}
		for _, ev := range events {
			s := e.Plan().Steps[ev.Step]
			switch {
			case ev.Kind == engine.SetEnded:
				told[ev.Set.Set] += ev.Set.Reps
			case ev.Kind != engine.StepEnded || s.Kind != plan.Work || ev.Cause == engine.BySkip:
			case ev.Cause == engine.ByClock, ev.Cause == engine.ByFinish && 2*ev.Taken >= ev.Length, ev.Taken >= ev.Length:
				worked[s.Set] += s.Reps
			default:
				worked[s.Set] += int(time.Duration(s.Reps) * ev.Taken / ev.Length)
			}
		}
		for set := range e.Plan().Sets {
			if told[set] != worked[set] {
				t.Fatalf("set %d tells of %d reps, its steps of %d", set, told[set], worked[set])
			}
		}
	})
}

// TestBooksAgree holds the session's clock against the steps that ended.
func TestBooksAgree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, events, now := drawRun(t)
		events = append(events, toEnd(t, e, now)...)
		var taken, halted time.Duration
		for _, ev := range events {
			if ev.Kind == engine.StepEnded {
				taken += ev.Taken
				halted += ev.Halted
			}
		}
		last := events[len(events)-1]
		if taken != last.Clock || taken+halted != last.Now {
			t.Fatalf("steps took %v and stood %v; the clocks say %v and %v", taken, halted, last.Clock, last.Now)
		}
	})
}

// TestNothingAfterTheEnd tries every action on a run that is over.
func TestNothingAfterTheEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, _, now := drawRun(t)
		e.Do(engine.Stop, now)
		for _, a := range append(actions, engine.Stop) {
			if events := e.Do(a, now+time.Hour); len(events) != 0 {
				t.Fatalf("%s after the end: %+v", a, events)
			}
		}
	})
}

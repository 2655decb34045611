package enginetest

import (
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// contract is a session with every kind of step.
const contract = `coldfloor: 1
title: Every kind of step
lead_in: 5s
blocks:
  - title: Up
    rounds: 2
    rest: 20s
    change: 4s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 1s, contacts: 1, easier: Heel raises}
      - {name: Split squat, reps_per_side: 3, rep: 2s, switch: 3s}
      - {name: Push-up, reps: 5, rep: 2s, finish: hand}
`

// Plan returns a plan with every kind of step.
func Plan(t testing.TB) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("contract.yaml", []byte(contract))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// AssertListener holds a listener of runs of p to the contract: whatever is
// done in a run, told in one batch or event by event, it neither panics, nor
// blocks, nor changes what it is told. Fresh returns a listener that has heard
// nothing.
func AssertListener(t testing.TB, p *plan.Plan, fresh func() engine.Listener) {
	t.Helper()
	for _, script := range scripts {
		e := engine.New(p, engine.Options{CountIn: 3 * time.Second})
		l := fresh()
		tell := func(events []engine.Event) {
			t.Helper()
			was := append([]engine.Event{}, events...)
			done := make(chan struct{})
			go func() { defer close(done); l.Heard(events, e.View()) }()
			select {
			case <-done:
			case <-time.After(10 * time.Second):
				t.Fatalf("%T blocks at %v", l, events)
			}
			for i := range was {
				if was[i] != events[i] {
					t.Fatalf("%T changed %+v to %+v", l, was[i], events[i])
				}
			}
		}
		tell(nil)
		now := time.Duration(0)
		for _, a := range script {
			now += 7 * time.Second
			tell(e.Do(a, now))
		}
		for range 100 { // to the end, late
			now += time.Minute
			tell(e.Advance(now))
			tell(e.Do(engine.Finish, now))
			tell(e.Do(engine.Resume, now))
		}
		if e.View().Phase != engine.Over {
			t.Fatalf("the run has not ended: %+v", e.View())
		}
	}
}

// scripts are what is done in a run, an action each 7 s: nothing, all of it, and
// a stop.
var scripts = [][]engine.Action{
	{engine.Start},
	{engine.Swap, engine.Start, engine.More, engine.Pause, engine.Resume, engine.Finish, engine.Back, engine.Repeat, engine.Swap,
		engine.Skip, engine.Gap, engine.Skip, engine.Back, engine.Resume, engine.Skip, engine.Skip, engine.Repeat, engine.Repeat, engine.Desert},
	{engine.Start, engine.Skip, engine.Skip, engine.Stop},
	{engine.Start, engine.Finish, engine.Stop},
}

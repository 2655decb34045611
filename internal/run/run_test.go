package run

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// testSession has straight sets, a superset with sides, and a set ended by hand.
const testSession = `coldfloor: 1
title: Test hops
lead_in: 5s
blocks:
  - title: Up
    rounds: 2
    rest: 30s
    exercises:
      - {name: Pogo hops, reps: 10, rep: 1s, contacts: 1}
  - title: Strong
    rounds: 2
    rest: 20s
    change: 4s
    exercises:
      - {name: Split squat, reps_per_side: 3, rep: 2s, switch: 3s, easier: Half depth}
      - {name: Push-up, reps: 5, rep: 2s, finish: hand}
`

// clock is a clock that a test turns.
type clock struct {
	mono  time.Duration
	start time.Time // wall time at mono 0
}

func newClock() *clock {
	return &clock{start: time.Date(2026, 7, 14, 18, 30, 0, 0, time.FixedZone("", 2*60*60))}
}

func (c *clock) Mono() time.Duration { return c.mono }
func (c *clock) Wall() time.Time     { return c.start.Add(c.mono) }

func testPlan(t testing.TB) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("test-hops.yaml", []byte(testSession))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// rig is a run that a test drives by hand.
type rig struct {
	t     testing.TB
	clock *clock
	rec   *Recorder
	run   *Active
}

func newRig(t testing.TB, j *journal.Journal, c *clock) *rig {
	t.Helper()
	p := testPlan(t)
	o := engine.Options{CountIn: 3 * time.Second}
	rec, err := Begin(j, p, Opening{Options: o, Player: "Player"}, c)
	if err != nil {
		t.Fatal(err)
	}
	return &rig{t, c, rec, Bare(p, o, c, rec)}
}

// pass lets time pass, with a look at the clock four times a second.
func (r *rig) pass(d time.Duration) {
	for end := r.clock.mono + d; r.clock.mono < end; {
		r.clock.mono += min(250*time.Millisecond, end-r.clock.mono)
		r.run.Tick()
	}
}

// do passes time and then acts.
func (r *rig) do(after time.Duration, a engine.Action) {
	r.pass(after)
	r.run.Do(a)
}

// toEnd ends every set that waits, until the session is over.
func (r *rig) toEnd() {
	r.t.Helper()
	for range 10_000 {
		switch r.run.View().Phase {
		case engine.Over:
			return
		case engine.Overtime:
			r.run.Do(engine.Finish)
		case engine.Halted:
			r.run.Do(engine.Resume)
		default:
			r.pass(250 * time.Millisecond)
		}
	}
	r.t.Fatal("no end in sight")
}

func (r *rig) close() {
	r.t.Helper()
	if err := r.rec.Close(); err != nil {
		r.t.Fatal(err)
	}
}

func openTemp(t testing.TB) *journal.Journal {
	t.Helper()
	j, err := journal.Open(filepath.Join(t.TempDir(), "data", "journal.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func contents(t testing.TB, j *journal.Journal) string {
	t.Helper()
	b, err := os.ReadFile(j.Path())
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// load reads a journal that must have nothing wrong with it.
func load(t testing.TB, j *journal.Journal) []*journal.Run {
	t.Helper()
	runs, problems, err := journaltest.Load(j.Path())
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	return runs
}

func only(t testing.TB, j *journal.Journal) *journal.Run {
	t.Helper()
	runs := load(t, j)
	if len(runs) != 1 {
		t.Fatalf("%d runs, want 1", len(runs))
	}
	return runs[0]
}

func ptr[T any](v T) *T { return &v }

// leftOver returns the runs of j that can be resumed.
func leftOver(j *journal.Journal) ([]*journal.Run, error) {
	o, err := j.Overview()
	if err != nil {
		return nil, err
	}
	return o.Full(left(j, o.Unfinished())...)
}

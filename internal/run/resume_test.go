package run

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/journal/journaltest"
	"coldfloor/internal/plan"
	"coldfloor/sessions/sessionstest"
)

// A run that was cut short is offered, resumes where it was, and ends
// as one run.
func TestResume(t *testing.T) {
	j := openTemp(t)
	c := newClock()
	r := newRig(t, j, c)
	r.do(0, engine.Start)
	r.pass(20 * time.Second) // in the rest after the first set
	if got, err := leftOver(j); err != nil || len(got) != 0 {
		t.Errorf("offered while it runs: %v, %v", got, err)
	}
	r.close() // the process is gone; the engine's end was never heard
	got, err := leftOver(j)
	if err != nil || len(got) != 1 {
		t.Fatalf("%v, %v", got, err)
	}
	re, err := Resume(got[0])
	if err != nil {
		t.Fatal(err)
	}
	if s := re.Plan.Steps[re.Options.From]; s.Kind != plan.Rest || s.Round != 1 || s.Block != 1 {
		t.Errorf("goes on with %+v", s)
	}
	c.mono = 0
	c.start = c.start.Add(time.Hour) // another process, an hour later
	o := re.Options
	o.Into = re.passed(c.start)
	if left := 30*time.Second - o.Into; left != countIn {
		t.Errorf("%v of a rest are left that was over long ago, want the count-in", left)
	}
	rec, err := GoOn(j, re, o, c)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := GoOn(j, re, re.Options, c); !errors.Is(err, journal.ErrLive) {
		t.Errorf("taken up twice: %v", err)
	}
	if err := j.CloseAsIs(got[0].ID); !errors.Is(err, journal.ErrLive) {
		t.Errorf("closed while it runs: %v", err)
	}
	r2 := &rig{t, c, rec, Bare(re.Plan, o, c, rec)}
	r2.do(0, engine.Start)
	r2.toEnd()
	r2.close()
	run := only(t, j)
	if run.State != journal.Complete || len(run.Sets) != 6 || fmt.Sprint(run.RoundsDone()) != "[2 2]" {
		t.Errorf("%+v", run)
	}
	// 15 s until the set was written, then the count-in and what the plan asks for after the rest.
	want := 15*time.Second + countIn + re.Plan.Total - re.Plan.Steps[re.Options.From].End()
	if run.Clock != want || (run.Elapsed-want).Abs() > 2*time.Second {
		t.Errorf("clock %v, elapsed %v; want %v", run.Clock, run.Elapsed, want)
	}
	if r := run.Rests[0]; r.TakenS != (time.Hour-15*time.Second+countIn).Seconds() || r.TakenS-r.PausedS != 30 || r.Left {
		t.Errorf("rest %+v, want it taken from the first set's end to the second's start", r)
	}
	if _, err := GoOn(j, re, re.Options, c); err == nil || errors.Is(err, journal.ErrLive) {
		t.Errorf("gone on with after its end: %v", err)
	}
	if left, _ := filepath.Glob(j.Path() + ".*.live"); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

func TestCloseAsIs(t *testing.T) {
	j := openTemp(t)
	r := newRig(t, j, newClock())
	r.do(0, engine.Start)
	r.do(20*time.Second, engine.Pause)
	r.close()
	if err := j.CloseAsIs(r.rec.Run()); err != nil {
		t.Fatal(err)
	}
	run := only(t, j)
	if run.State != journal.Interrupted || run.Elapsed != 20*time.Second || run.Clock != 20*time.Second {
		t.Errorf("%+v", run)
	}
	if err := j.CloseAsIs(run.ID); err == nil {
		t.Error("closed twice")
	}
	if got, err := leftOver(j); err != nil || len(got) != 0 {
		t.Errorf("%v, %v", got, err)
	}
}

// Cut at any line and resumed, a run of any session ends with the sets
// that were planned.
func TestResumeFromAnyLine(t *testing.T) {
	dir := t.TempDir()
	n := 0
	rapid.Check(t, func(t *rapid.T) {
		n++
		j, err := journal.Open(filepath.Join(dir, fmt.Sprint(n)))
		if err != nil {
			t.Fatal(err)
		}
		p := plan.Of(sessionstest.Draw(t))
		c := newClock()
		opts := engine.Options{ByHand: rapid.Bool().Draw(t, "by hand"), CountIn: 3 * time.Second}
		rec, err := Begin(j, p, Opening{Options: opts}, c)
		if err != nil {
			t.Fatal(err)
		}
		walk(t, rec, engine.New(p, opts), c)
		text, err := os.ReadFile(j.Path())
		if err != nil {
			t.Fatal(err)
		}
		lines := strings.SplitAfter(strings.TrimSuffix(string(text), "\n"), "\n")
		cut := strings.Join(lines[:rapid.IntRange(1, len(lines)-1).Draw(t, "cut")], "")
		torn := lines[len(lines)-1][:rapid.IntRange(0, 60).Draw(t, "torn")]
		if err := os.WriteFile(j.Path(), []byte(cut+torn), 0o600); err != nil {
			t.Fatal(err)
		}

		got, err := leftOver(j)
		if err != nil || len(got) != 1 {
			t.Fatalf("%v, %v", got, err)
		}
		re, err := resumeWith(got[0], p)
		if errors.Is(err, ErrNothingLeft) {
			if err = j.CloseAsIs(got[0].ID); err != nil {
				t.Fatal(err)
			}
		} else {
			c = &clock{start: c.Wall().Add(time.Minute)}
			rec, err := GoOn(j, re, re.Options, c)
			if err != nil {
				t.Fatal(err)
			}
			walk(t, rec, engine.New(p, re.Options), c)
		}
		runs, _, err := journaltest.Load(j.Path())
		if err != nil || len(runs) != 1 || runs[0].State == journal.Unfinished {
			t.Fatalf("%v, %v", runs, err)
		}
		sets := map[journal.Place]int{} // reps of each, however often it was done
		for _, s := range runs[0].Sets {
			sets[s.Place] = s.Planned
		}
		if len(sets) != len(p.Sets) {
			t.Fatalf("%d sets, want %d", len(sets), len(p.Sets))
		}
		for _, want := range p.Sets {
			if reps, ok := sets[journal.Place{Block: want.Block, Round: want.Round, Exercise: want.Exercise}]; !ok || reps != want.Reps {
				t.Fatalf("set %+v: %v, %d reps", want, ok, reps)
			}
		}
	})
}

// walk takes a run to its end through random actions and waits.
func walk(t *rapid.T, rec *Recorder, e *engine.Engine, c *clock) {
	hear := func(a engine.Action) { rec.Heard(e.Do(a, c.mono), e.View()) }
	hear(engine.Start)
	actions := []engine.Action{engine.Finish, engine.Pause, engine.Resume, engine.More, engine.Back, engine.Repeat, engine.Skip, engine.Swap, engine.Gap}
	for range rapid.IntRange(0, 20).Draw(t, "actions") {
		c.mono += time.Duration(rapid.IntRange(0, 90_000).Draw(t, "wait, ms")) * time.Millisecond
		hear(rapid.SampledFrom(actions).Draw(t, "action"))
	}
	for e.View().Phase != engine.Over {
		c.mono += time.Hour
		rec.Heard(e.Advance(c.mono), e.View())
		hear(engine.Resume)
		hear(engine.Finish)
	}
	if err := rec.Close(); err != nil {
		t.Fatal(err)
	}
}

// A run whose start is lost can be logged as it stands, but not resumed.
func TestResumeWithoutWhatWasPrescribed(t *testing.T) {
	if _, err := Resume(&journal.Run{}); err == nil {
		t.Error("resumed without what was prescribed")
	}
}

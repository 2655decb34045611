package run

import (
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"coldfloor/internal/engine"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/internal/transcripttest"
	"coldfloor/sessions"
)

var _ engine.Listener = (*Recorder)(nil)

// One run in which everything happens, line by line.
func TestRecorderWritesWhatHappens(t *testing.T) {
	j := openTemp(t)
	r := newRig(t, j, newClock())
	r.do(0, engine.Swap) // nothing to swap: the first exercise has no easier variant
	r.do(time.Second, engine.Start)
	r.do(10*time.Second, engine.Finish) // set 1, 5 s early
	r.do(10*time.Second, engine.Pause)
	r.do(20*time.Second, engine.Resume) // a rest of 30 s takes 50
	r.do(25*time.Second, engine.Skip)   // set 2
	r.do(time.Second, engine.Swap)      // the split squat to come
	r.do(time.Second, engine.More)
	r.do(60*time.Second, engine.Back)
	r.toEnd()
	r.rec.Rate(journal.Rating{RPE: ptr(6.5), Pain: ptr(true), Where: ptr("left knee")})
	r.rec.Rate(journal.Rating{})
	r.close()
	text := regexp.MustCompile(`,"crc":"[0-9a-f]{8}"`).ReplaceAllString(contents(t, j), "") // it goes with the run's random name
	golden(t, "everything.jsonl", strings.ReplaceAll(text, r.rec.Run(), "RUN"))
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *transcripttest.Update {
		if err := os.WriteFile(path, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; got\n%s", path, got)
	}
}

// An untouched run takes what the plan prescribes, set by set and rest by rest.
func TestRecorderUntouchedRun(t *testing.T) {
	j := openTemp(t)
	p := testPlan(t)
	c := newClock()
	rec, err := Begin(j, p, Opening{Options: engine.Options{AllPaced: true}}, c)
	if err != nil {
		t.Fatal(err)
	}
	run := Bare(p, engine.Options{AllPaced: true}, c, rec)
	run.Do(engine.Start)
	for range int(p.Total / time.Second) {
		c.mono += time.Second
		run.Tick()
	}
	if err := rec.Close(); err != nil {
		t.Fatal(err)
	}
	got := only(t, j)
	if got.State != journal.Complete || got.Elapsed != p.Total || got.Clock != p.Total {
		t.Errorf("%s after %v, clock %v; want complete after %v", got.State, got.Elapsed, got.Clock, p.Total)
	}
	if len(got.Sets) != len(p.Sets) || !reflect.DeepEqual(got.RoundsDone(), []int{2, 2}) {
		t.Errorf("%d sets, rounds %v; want %d and [2 2]", len(got.Sets), got.RoundsDone(), len(p.Sets))
	}
	for _, s := range got.Sets {
		if s.TakenS != s.PlannedS || s.Reps != s.Planned || !s.Paced || s.ByHand || s.Outcome != "done" {
			t.Errorf("untouched set: %+v", s)
		}
	}
	for _, s := range got.Rests {
		if s.TakenS != s.PrescribedS || s.End != "clock" {
			t.Errorf("untouched rest: %+v", s)
		}
	}
	if got.Contacts() != journal.CountOf(p.Contacts) {
		t.Errorf("%v contacts, want %d", got.Contacts(), p.Contacts)
	}
}

// A machine that sleeps through a rest: its monotonic clock stands, the wall's
// goes on. The rest took as long as the wall says.
func TestRecorderRestSleptThrough(t *testing.T) {
	j := openTemp(t)
	r := newRig(t, j, newClock())
	r.run.Do(engine.Start)
	r.pass(20 * time.Second) // 5 s into the rest
	asleep := 10 * time.Minute
	before := r.clock.Wall()
	r.clock.start = r.clock.start.Add(asleep)
	r.pass(time.Second)
	r.do(time.Second, engine.Resume)
	r.pass(26 * time.Second)
	r.do(time.Second, engine.Stop)
	r.close()
	run := only(t, j)
	rest := run.Rests[0]
	if want := (asleep + 32*time.Second).Seconds(); rest.TakenS < want-2 || rest.TakenS > want+2 || rest.TakenS-rest.PausedS != 30 {
		t.Errorf("rest %+v, want about %v taken", rest, want)
	}
	if run.Elapsed < asleep {
		t.Errorf("elapsed %v", run.Elapsed)
	}
	for e, err := range journal.Read(strings.NewReader(contents(t, j))) {
		if err == nil && e.Event == journal.EventPause && e.At.Sub(before).Abs() > time.Second {
			t.Errorf("paused at %v, the machine went to sleep at %v", e.At, before)
		}
	}
}

func TestRecorderStampsLateCalls(t *testing.T) {
	j := openTemp(t)
	r := newRig(t, j, newClock())
	r.run.Do(engine.Start)
	r.pass(14 * time.Second)
	r.clock.mono += 1900 * time.Millisecond // the first set ends at 15 s, seen 0.9 s late
	r.run.Tick()
	r.do(0, engine.Stop)
	r.close()
	for e, err := range journal.Read(strings.NewReader(contents(t, j))) {
		if err == nil && e.Event == journal.EventSet && (e.Clock != 15 || !e.At.Equal(newClock().start.Add(15*time.Second))) {
			t.Errorf("set at %v, clock %v", e.At, e.Clock)
		}
	}
}

// Jumps that nobody counted are not none: of a set of them, and of a block that
// has some, the contacts are not known.
func TestContactsThatNobodyCounted(t *testing.T) {
	s, err := sessions.Parse("t.yaml", []byte(`coldfloor: 1
title: T
blocks:
  - title: Up
    exercises: [{name: Pogo hops, reps: 5, rep: 500ms}, {name: Plank, time: 2s}, {name: Line hops, reps: 4, rep: 500ms, contacts: 2}, {name: Skips, reps: 4, contacts: 0}]
`))
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Of(s)
	if b := Prescribed(p)[0]; b.Contacts.Known || b.Contacts.N != 8 {
		t.Errorf("prescribed %v", b.Contacts)
	}
	for i, want := range []journal.Count{{}, journal.CountOf(0), journal.CountOf(8), journal.CountOf(0)} {
		s := p.Sets[i]
		if got := contacts(p.Exercise(s.First), &engine.SetResult{Outcome: engine.Done, Reps: s.Reps}); got != want {
			t.Errorf("set %d: %v, want %v", i, got, want)
		}
	}
	if got := contacts(p.Exercise(p.Sets[0].First), &engine.SetResult{Outcome: engine.Skipped}); got != journal.CountOf(0) {
		t.Errorf("a skipped set: %v", got)
	}
}

// A player who says nothing more takes nothing back: while a rating waits for the
// disk, an empty one leaves it and another takes its place.
func TestRatingThatWaits(t *testing.T) {
	r := newRig(t, openTemp(t), newClock())
	if err := r.rec.queue.close(); err != nil {
		t.Fatal(err)
	}
	var full atomic.Bool
	full.Store(true)
	var got []float64
	r.rec.queue = newQueue(func(lines ...journal.Line) error {
		if full.Load() {
			return errFull
		}
		for _, l := range lines {
			if l.Rating != nil {
				got = append(got, *l.Rating.RPE)
			}
		}
		return nil
	})
	r.do(time.Second, engine.Start)
	r.do(time.Second, engine.Stop)
	r.rec.Rate(journal.Rating{RPE: ptr(5.0)})
	r.rec.Rate(journal.Rating{RPE: ptr(6.0)})
	r.rec.Rate(journal.Rating{})
	full.Store(false)
	r.close()
	if !slices.Equal(got, []float64{6}) {
		t.Errorf("ratings written: %v, want [6]", got)
	}
}

package plain

import (
	"bytes"
	"coldfloor/internal/run"
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// short is a session of 30 s with something of everything.
const short = `
coldfloor: 1
title: Hallway speed A
lead_in: 3s
blocks:
  - title: Up
    rounds: 2
    rest: 5s
    change: 2s
    exercises:
      - {name: Pogo hops, reps: 4, rep: 500ms, contacts: 1, cues: [Stiff ankles, Quiet floor], how: Bounce.}
      - {name: Split squat, reps_per_side: 1, tempo: 1-0-1, switch: 1s, easier: Both feet on the floor}
`

// want is what a run of it says when nobody touches a key.
const want = `0:00.000 start Hallway speed A, 0:26, 4 sets, 8 contacts
0:00.000 lead-in 3s, next Pogo hops, 4 reps, round 1 of 2 (Bounce.)
0:03.000 work Pogo hops, 4 reps, round 1 of 2 (Stiff ankles, Quiet floor)
0:05.000 set done, Pogo hops, 4 of 4 reps, 2s
0:05.000 change 2s, next Split squat, left side, 1 rep, round 1 of 2
0:07.000 work Split squat, left side, 1 rep, round 1 of 2
0:09.000 switch 1s to the right side
0:10.000 work Split squat, right side, 1 rep, round 1 of 2
0:12.000 set done, Split squat, 2 of 2 reps, 4s
0:12.000 rest 5s, next Pogo hops, 4 reps, round 2 of 2 (Bounce.)
0:17.000 work Pogo hops, 4 reps, round 2 of 2 (Stiff ankles, Quiet floor)
0:19.000 set done, Pogo hops, 4 of 4 reps, 2s
0:19.000 change 2s, next Split squat, left side, 1 rep, round 2 of 2
0:21.000 work Split squat, left side, 1 rep, round 2 of 2
0:23.000 switch 1s to the right side
0:24.000 work Split squat, right side, 1 rep, round 2 of 2
0:26.000 set done, Split squat, 2 of 2 reps, 4s
0:26.000 finish complete
`

func parse(t testing.TB, text string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("test.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// run runs a plan on a fast clock with what is typed.
func runPlan(t testing.TB, p *plan.Plan, in io.Reader, file string) (string, error) {
	t.Helper()
	h := &run.Host{Speed: 500, AllPaced: in == nil}
	var out bytes.Buffer
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	err := Run(ctx, Options{Host: h, Plan: p, Journal: file, In: in, Out: &out, Err: io.Discard})
	return out.String(), errors.Join(err, h.Close())
}

// Untouched, a run says each event at its planned time and takes exactly the
// plan's total.
func TestUntouched(t *testing.T) {
	file := filepath.Join(t.TempDir(), "journal.jsonl")
	got, err := runPlan(t, parse(t, short), nil, file)
	if err != nil {
		t.Fatal(err)
	}
	if got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	runs, _, err := journal.Load(file)
	if err != nil || len(runs) != 1 || runs[0].State != journal.Complete || len(runs[0].Sets) != 4 {
		t.Errorf("the journal holds %+v, %v", runs, err)
	}
}

// Without a keyboard a set that waits for a key is paced: nothing waits for
// ever.
func TestNoKeyboardNothingWaits(t *testing.T) {
	got, err := runPlan(t, parse(t, strings.Replace(short, "reps: 4,", "reps: 4, finish: hand,", 1)), nil, "")
	if err != nil || got != want {
		t.Errorf("%v, got\n%s", err, got)
	}
}

// A built-in session runs to its planned end, in lines of the one form.
func TestBuiltinRunsToItsEnd(t *testing.T) {
	line := regexp.MustCompile(`^\d+:\d\d(:\d\d)?\.\d{3} [a-z-]+( \S.*)?$`)
	s, err := sessions.Open("ten-minutes")
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Of(s)
	got, err := runPlan(t, p, nil, "")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(got), "\n")
	for _, l := range lines {
		if !line.MatchString(l) {
			t.Errorf("%q", l)
		}
	}
	if last := lines[len(lines)-1]; !strings.HasSuffix(last, " finish complete") || !strings.HasPrefix(last, "10:00.000") {
		t.Errorf("ends with %q", last)
	}
}

// typist types a line each time it is asked, once the lines before have had
// their effect.
type typist struct {
	steps []step
	out   *lockedBuffer
}

// step is a text to wait for in what the run says, and what is typed then.
type step struct{ await, text string }

func (y *typist) Read(b []byte) (int, error) {
	if len(y.steps) == 0 {
		return 0, io.EOF
	}
	for end := time.Now().Add(30 * time.Second); !strings.Contains(y.out.String(), y.steps[0].await); {
		if time.Now().After(end) {
			return 0, fmt.Errorf("%q was not said", y.steps[0].await)
		}
		time.Sleep(time.Millisecond)
	}
	n := copy(b, y.steps[0].text+"\n")
	y.steps = y.steps[1:]
	return n, nil
}

func TestKeys(t *testing.T) {
	byHand := strings.Replace(short, "reps: 4,", "reps: 4, finish: hand,", 1)
	p := parse(t, byHand)
	out := &lockedBuffer{}
	y := &typist{out: out, steps: []step{
		{"wait press Enter", ""},
		{"set done, Pogo hops", "p"},
		{"pause by key", "e"},
		{"variant Both feet on the floor", "p"},
		{"go-on", "?"},
		{"", "+"},
		{"more 15s", "zzz"},
		{"", "q"},
		{"q once more", "q"},
	}}
	h := &run.Host{Speed: 20}
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	if err := Run(ctx, Options{Host: h, Plan: p, In: y, Out: out, Err: io.Discard}); err != nil {
		t.Fatal(err)
	}
	if !strings.HasSuffix(strings.TrimSpace(out.String()), "finish stopped") {
		t.Errorf("got\n%s", out.String())
	}
}

// The interrupt key stops and logs; a hang-up leaves the run to be gone on
// with.
func TestSignals(t *testing.T) {
	for cause, want := range map[error]journal.State{ErrInterrupted: journal.Stopped, nil: journal.Unfinished} {
		file := filepath.Join(t.TempDir(), "journal.jsonl")
		ctx, cancel := context.WithCancelCause(context.Background())
		out := &lockedBuffer{}
		h := &run.Host{Speed: 20, AllPaced: true}
		done := make(chan error)
		go func() {
			err := Run(ctx, Options{Host: h, Plan: parse(t, short), Journal: file, Out: out, Err: io.Discard})
			done <- errors.Join(err, h.Close())
		}()
		for !strings.Contains(out.String(), "set done") {
			time.Sleep(time.Millisecond)
		}
		cancel(cause)
		if err := <-done; err != nil {
			t.Fatal(err)
		}
		runs, _, err := journal.Load(file)
		if err != nil || len(runs) != 1 || runs[0].State != want || len(runs[0].Sets) == 0 {
			t.Errorf("%v: %+v, %v; want %s", cause, runs, err, want)
		}
	}
}

func TestQuestionsBeforehand(t *testing.T) {
	dir := t.TempDir()
	bad := filepath.Join(dir, "journal.jsonl", "in", "a", "file")
	if _, err := runPlan(t, parse(t, short), nil, filepath.Join(dir, "journal.jsonl")); err != nil {
		t.Fatal(err)
	}
	if _, err := runPlan(t, parse(t, short), nil, bad); err == nil || !strings.Contains(fault.Text(err), "--no-log") {
		t.Errorf("a journal that cannot be written, nobody to ask: %v", err)
	}
	if _, err := runPlan(t, parse(t, short), strings.NewReader("n\n"), bad); err == nil {
		t.Error("runs without a log though the player says no")
	}
	if out, err := runPlan(t, parse(t, short), strings.NewReader("y\n"), bad); err != nil || !strings.HasSuffix(out, "finish complete\n") {
		t.Errorf("does not run without a log: %v\n%s", err, out)
	}
}

// A reader that goes away ends the run.
func TestClosedPipe(t *testing.T) {
	h := &run.Host{Speed: 500, AllPaced: true}
	err := Run(context.Background(), Options{Host: h, Plan: parse(t, short), Out: closedPipe{}, Err: io.Discard})
	if !errors.Is(err, io.ErrClosedPipe) {
		t.Errorf("got %v", err)
	}
}

type closedPipe struct{}

func (closedPipe) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

// What a session file says is never sent raw to the terminal.
func TestTextIsSafe(t *testing.T) {
	p := parse(t, short)
	p.Session.Title = "a\x1b[2Jb"
	p.Session.Blocks[0].Exercises[0].Name = "x\u202ey"
	got, err := runPlan(t, p, nil, "")
	if err != nil || strings.ContainsAny(got, "\x1b\u202e") {
		t.Errorf("%v, %q", err, got)
	}
}

// lockedBuffer is a buffer that one goroutine may read while another writes.
type lockedBuffer struct {
	mu  sync.Mutex
	buf bytes.Buffer
}

func (b *lockedBuffer) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.buf.Write(p)
}

func (b *lockedBuffer) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.buf.String()
}

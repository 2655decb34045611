package plain

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"

	"github.com/adrg/xdg"

	"coldfloor/internal/cautions"
	"coldfloor/internal/fault"
	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/internal/text/texttest"
	"coldfloor/sessions"
)

// TestMain keeps what the tests remember out of the home folder.
func TestMain(m *testing.M) {
	dir, err := os.MkdirTemp("", "plain")
	if err != nil {
		panic(err)
	}
	os.Setenv("XDG_STATE_HOME", dir)
	xdg.Reload()
	if err := cautions.Remember(""); err != nil {
		panic(err)
	}
	code := m.Run()
	os.RemoveAll(dir)
	os.Exit(code)
}

// short is a session of 26 s with something of everything.
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

func parse(t testing.TB, text string) *plan.Plan {
	t.Helper()
	s, err := sessions.Parse("test.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// bubble is the clock of a test in which time passes at once.
type bubble struct {
	start time.Time
	jump  atomic.Int64 // nanoseconds that it is ahead
	speed float64
}

func newBubble(speed float64) run.Clock { return &bubble{start: time.Now(), speed: speed} }

func (b *bubble) Mono() time.Duration {
	return time.Duration(float64(time.Since(b.start))*b.speed) + time.Duration(b.jump.Load())
}
func (b *bubble) Wall() time.Time { return b.start.Add(b.Mono()).Round(0).UTC() }
func (b *bubble) Speed() float64  { return b.speed }

// typist is somebody who types a line when a text was said that was not said
// before. Once all is typed nothing more is.
type typist struct {
	script []cue
	out    *output
	cancel context.CancelCauseFunc
	at     int // how much of what was said was waited for
}

// cue is a text to wait for, a time to let pass then, and what is typed.
type cue struct {
	await string
	after time.Duration
	text  string
}

// Read implements io.Reader.
func (y *typist) Read(b []byte) (int, error) {
	if len(y.script) == 0 {
		return 0, io.EOF
	}
	c := y.script[0]
	y.script = y.script[1:]
	y.at = y.out.await(c.await, y.at)
	time.Sleep(c.after)
	switch c.text {
	case "^D":
		return 0, io.EOF
	case "^C":
		y.cancel(ErrInterrupted)
		time.Sleep(time.Second)
		return 0, io.EOF
	case "HUP":
		y.cancel(nil)
		time.Sleep(time.Second)
		return 0, io.EOF
	}
	fmt.Fprintln(y.out, c.text) // the terminal shows what is typed
	return copy(b, c.text+"\n"), nil
}

// output is what was said, by both streams in one. Make it with newOutput.
type output struct {
	mu    sync.Mutex
	wrote *sync.Cond
	buf   bytes.Buffer
}

func newOutput() *output {
	b := &output{}
	b.wrote = sync.NewCond(&b.mu)
	return b
}

func (b *output) Write(p []byte) (int, error) {
	b.mu.Lock()
	defer b.mu.Unlock()
	defer b.wrote.Broadcast()
	return b.buf.Write(p)
}

func (b *output) String() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return b.buf.String()
}

// await waits until text was said, in whatever language, from byte at of what was
// said on, with all of it marked, and returns where it ends. It waits for an hour
// of the bubble's time.
func (b *output) await(text string, at int) int {
	over := false
	defer time.AfterFunc(time.Hour, func() {
		b.mu.Lock()
		defer b.mu.Unlock()
		over = true
		b.wrote.Broadcast()
	}).Stop()
	b.mu.Lock()
	defer b.mu.Unlock()
	for {
		if over {
			fmt.Fprintf(&b.buf, "!!! %q was not said\n", text)
			return at
		}
		if i := strings.Index(texttest.Mark(b.buf.String())[at:], texttest.Mark(text)); i >= 0 {
			return at + i + len(texttest.Mark(text))
		}
		b.wrote.Wait()
	}
}

// play runs a session with what is typed, in no time, and returns what was said.
// With nothing typed there is no keyboard.
func play(t *testing.T, o run.Options, typed ...cue) (said string, err error) {
	t.Helper()
	synctest.Test(t, func(t *testing.T) {
		out := newOutput()
		o.Clock, o.NoKeys = newBubble, typed == nil
		f := run.NewFlow(o)
		lines := Options{Flow: f, Out: out, Err: out}
		if typed != nil {
			lines.In = &typist{script: typed, out: out}
		}
		err = errors.Join(Run(t.Context(), lines), f.Close())
		said = out.String()
	})
	return said, err
}

// Without a keyboard a set that waits for a key is paced: nothing waits for
// ever.
func TestNoKeyboardNothingWaits(t *testing.T) {
	byHand := strings.Replace(short, "reps: 4,", "reps: 4, finish: hand,", 1)
	got, err := play(t, run.Options{Plan: parse(t, byHand)})
	want, _ := play(t, run.Options{Plan: parse(t, short)})
	if err != nil || got != want {
		t.Errorf("%v, got\n%s", err, got)
	}
}

// The keyboard goes in a set that waits for it, and in a pause: the session goes
// on by its pace.
func TestKeyboardThatGoes(t *testing.T) {
	for name, typed := range map[string][]cue{
		"in overtime": {{"Enter starts", 0, ""}, {"wait, press", 0, "t"}},
		"in a pause":  {{"Enter starts", 0, ""}, {"work Pogo", 0, "p"}},
	} {
		got, err := play(t, run.Options{Plan: parse(t, short), ByHand: true}, typed...)
		if err != nil || !strings.Contains(got, "the keyboard is gone") || !strings.HasSuffix(got, "finish, done\n") {
			t.Errorf("%s: %v\n%s", name, err, got)
		}
	}
}

// A machine that was away, and nobody to press a key: the run says so and goes
// on.
func TestGapWithoutAKeyboard(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		out := newOutput()
		c := &bubble{start: time.Now(), speed: 1}
		f := run.NewFlow(run.Options{Plan: parse(t, short), NoKeys: true, Clock: func(float64) run.Clock { return c }})
		go func() {
			out.await("work Pogo", 0)
			c.jump.Add(int64(3 * time.Second)) // as a stopped process sees it
		}()
		if err := errors.Join(Run(t.Context(), Options{Flow: f, Out: out, Err: out}), f.Close()); err != nil {
			t.Error(err)
		}
		if got := out.String(); !strings.Contains(got, "the machine stood still for 3 s; going on") || !strings.HasSuffix(got, "finish, done\n") {
			t.Errorf("got\n%s", got)
		}
	})
}

// A journal that cannot be written is asked about; with nobody to ask nothing
// starts.
func TestJournalThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	blocked := filepath.Join(dir, "file")
	if err := os.WriteFile(blocked, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	bad := filepath.Join(blocked, "journal.jsonl")
	o := run.Options{Plan: parse(t, short), Journal: bad}
	if _, err := play(t, o); err == nil || !strings.Contains(fault.Text(err), "--no-log") {
		t.Errorf("nobody to ask: %v", err)
	}
	if out, err := play(t, o, cue{"run without a log", 0, "q"}); err == nil || strings.Contains(out, "work") {
		t.Errorf("runs without a log though the player leaves: %v\n%s", err, out)
	}
	if out, err := play(t, o, cue{"run without a log", 0, "r"}, cue{"Enter starts", 0, ""}); err != nil || !strings.HasSuffix(out, "finish, done\n") {
		t.Errorf("does not run without a log: %v\n%s", err, out)
	}
}

// A reader that goes away ends the run.
func TestClosedPipe(t *testing.T) {
	f := run.NewFlow(run.Options{Plan: parse(t, short), NoKeys: true})
	defer f.Close()
	err := Run(context.Background(), Options{Flow: f, Out: closedPipe{}, Err: io.Discard})
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
	got, err := play(t, run.Options{Plan: p})
	if err != nil || strings.ContainsAny(got, "\x1b\u202e") {
		t.Errorf("%v, %q", err, got)
	}
}

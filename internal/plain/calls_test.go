package plain

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"coldfloor/internal/run"
)

// called runs a session of one timed set with calls and returns its lines.
func called(t *testing.T, every, directions string, o run.Options) (said stamped) {
	t.Helper()
	o.Plan = parse(t, "coldfloor: 1\ntitle: T\nlead_in: 5s\nblocks: [{title: B, exercises: [{name: Footwork, time: 20s, call_every: "+every+", calls: ["+directions+"]}]}]\n")
	synctest.Test(t, func(t *testing.T) {
		said.start = time.Now()
		o.NoKeys, o.Clock, o.Seed = true, newBubble, 3
		f := run.NewFlow(o)
		if err := errors.Join(Run(t.Context(), Options{Flow: f, Out: &said, Err: io.Discard}), f.Close()); err != nil {
			t.Fatal(err)
		}
	})
	return said
}

// Each call is a line, its direction alone, at its moment; the line that begins
// the set says no more than there is time for before the first.
func TestCallsAreLines(t *testing.T) {
	got := called(t, "2s", "front left, right", run.Options{})
	if want := []string{"work Footwork, 20 s", "front left", "right"}; !slices.Contains(got.lines, want[0]) || !slices.Contains(got.lines, want[1]) || !slices.Contains(got.lines, want[2]) {
		t.Fatalf("%q", got.lines)
	}
	n := 0
	for i, l := range got.lines {
		if l == "front left" || l == "right" {
			n++
			if at := got.at[i] - 5*time.Second; at != time.Duration(n)*2*time.Second {
				t.Errorf("call %d is said %v after the start", n, at)
			}
		}
	}
	if n != 9 {
		t.Errorf("%d calls of 9 are said in %q", n, got.lines)
	}
}

// Each second three words are too many: they are left to the ear.
func TestCallsThatCannotBeReadAreNoLines(t *testing.T) {
	got := called(t, "1s", "far back left corner, left", run.Options{})
	if slices.Contains(got.lines, "far back left corner") || !slices.Contains(got.lines, "left") {
		t.Errorf("%q", got.lines)
	}
	for i := 1; i < len(got.lines)-1; i++ {
		if gap := got.at[i+1] - got.at[i]; spoken(got.lines[i]) > gap {
			t.Errorf("%q takes %v to say, the next line comes after %v", got.lines[i], spoken(got.lines[i]), gap)
		}
	}
	if strings.Contains(strings.Join(got.lines, "\n"), "work Footwork, 20 s") {
		t.Error("the set's line is longer than the time to its first call")
	}
}

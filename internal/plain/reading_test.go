package plain

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/run"
	"coldfloor/sessions"
)

// stamped is a writer that keeps each line with its moment.
type stamped struct {
	start time.Time
	lines []string
	at    []time.Duration
}

func (s *stamped) Write(b []byte) (int, error) {
	s.lines = append(s.lines, strings.TrimSpace(string(b)))
	s.at = append(s.at, time.Since(s.start))
	return len(b), nil
}

// spoken returns how long it takes to say a line at 175 words a minute, counted
// here without what the printer counts with: a figure and its unit are two
// words, and so are the parts of a word with a hyphen.
func spoken(line string) time.Duration {
	words := strings.Fields(strings.ReplaceAll(line, "-", " "))
	return time.Duration(float64(len(words)) / 175 * float64(time.Minute))
}

// Every line of an untouched run can be heard before the next one comes, in
// every session that comes with the program.
func TestEveryLineCanBeHeard(t *testing.T) {
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			t.Fatal(err)
		}
		p := plan.Of(s)
		synctest.Test(t, func(t *testing.T) {
			out := &stamped{start: time.Now()}
			f := run.NewFlow(run.Options{Plan: p, NoKeys: true, Clock: newBubble})
			if err := errors.Join(Run(t.Context(), Options{Flow: f, Out: out, Err: io.Discard}), f.Close()); err != nil {
				t.Fatal(err)
			}
			for i := 1; i < len(out.lines)-1; i++ { // the first, its title, is said before the start
				if gap := out.at[i+1] - out.at[i]; spoken(out.lines[i]) > gap {
					t.Errorf("%s at %v: %q takes %v to say, the next line comes after %v", b.Name, out.at[i], out.lines[i], spoken(out.lines[i]), gap)
				}
			}
		})
	}
}

// A change of 10 s between two exercises of long names is told in less.
func TestAChangeCanBeHeard(t *testing.T) {
	text := strings.Replace(strings.Replace(short, "change: 2s", "change: 10s", 1), "name: Split squat",
		"how: Lower in three seconds and rise in one with the front foot flat and the back knee just off the floor all the while., name: Rear-foot-raised split squat with both hands overhead", 1)
	said, err := play(t, run.Options{Plan: parse(t, text)})
	if err != nil {
		t.Fatal(err)
	}
	for l := range strings.Lines(said) {
		if strings.HasPrefix(l, "next exercise") && spoken(l) > 10*time.Second {
			t.Errorf("%v: %s", spoken(l), l)
		}
	}
}

// Package journaltest says what a journal holds as a reader of a test wants to
// see it.
package journaltest

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"coldfloor/internal/journal"
)

// Holds says what the journal at path holds, with which nothing may be wrong: a
// line a run, and below it a line a set, rest and result. Names of runs, which
// differ from run to run of a test, are left out.
func Holds(t testing.TB, path string) []byte {
	t.Helper()
	var out bytes.Buffer
	runs, problems, err := Load(path)
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems)
	}
	for _, r := range runs {
		fmt.Fprintf(&out, "%s %s, %v long, rounds %v, contacts %v", r.Start.UTC().Format("2 Jan 15:04:05"), r.State, r.Elapsed.Round(time.Second), r.RoundsDone(), r.Contacts())
		if r.Rating.RPE != nil {
			fmt.Fprintf(&out, ", effort %g", *r.Rating.RPE)
		}
		for _, s := range r.Said {
			fmt.Fprint(&out, said(s))
		}
		fmt.Fprintln(&out)
		below(&out, r)
	}
	return out.Bytes()
}

// said returns what a player said of a run; what was not said is left out.
func said(s journal.Statement) string {
	var text string
	if s.Pain != nil {
		text = fmt.Sprintf(", pain %v", *s.Pain)
	}
	if s.Where != "" {
		text += fmt.Sprintf(" %q", s.Where)
	}
	if s.Note != "" {
		text += fmt.Sprintf(", note %q", s.Note)
	}
	return text
}

// below writes what was done in a run.
func below(out *bytes.Buffer, r *journal.Run) {
	for _, s := range r.Sets {
		fmt.Fprintf(out, "  %s set %d.%d.%d %s by %s, %d reps\n", s.At.UTC().Format("2 Jan 15:04:05"), s.Block, s.Round, s.Exercise, s.Outcome, s.End, s.Reps)
	}
	for _, s := range r.Rests {
		fmt.Fprintf(out, "  rest after %d.%d: %g of %g s by %s, left %v\n", s.Block, s.Round, s.TakenS, s.PrescribedS, s.End, s.Left)
	}
	for _, m := range r.Measures {
		value := "left out"
		if m.Value != nil {
			value = fmt.Sprint(*m.Value)
		}
		fmt.Fprintf(out, "  measured %s, %s, try %d: %s\n", m.Name, m.Side, m.Try, value)
	}
}

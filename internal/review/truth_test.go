package review

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
	"coldfloor/internal/runs"
)

// A made-up journal, counted while it was made.
func TestAgainstTruth(t *testing.T) {
	var buf bytes.Buffer
	truth, err := journalgen.Write(&buf, journalgen.Options{Player: "Ana", Sessions: 90, First: monday, Seed: 7})
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "a.jsonl")
	if err := os.WriteFile(path, buf.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	s, files, err := Of([]string{path}, Options{Now: monday.AddDate(1, 0, 0)}, runs.Options{Bound: 10_000})
	if err != nil {
		t.Fatal(err)
	}
	p := s.Players[0]
	if files[0].Lines != truth.Lines || p.Sessions != 90 || p.Complete != 90 || p.Sets != (Share{truth.Sets, truth.Sets}) ||
		p.Rest.Count != truth.Rests || p.Contacts != truth.Contacts || p.Painful != truth.Painful || p.Rounds != (Share{810, 810}) {
		t.Errorf("%d lines, %+v; made were %d sets, %d rests, %d contacts", files[0].Lines, p.Total, truth.Sets, truth.Rests, truth.Contacts)
	}
	x := make([]float64, len(truth.Deviations))
	for i, d := range truth.Deviations {
		x[i] = d.Round(Resolution).Seconds()
	}
	slices.Sort(x)
	m, _ := p.Rest.Deviations.Median()
	if want := (x[(len(x)-1)/2] + x[len(x)/2]) / 2; m.Seconds() != want {
		t.Errorf("median deviation %v, want %v s", m, want)
	}
	total := 0.0
	for _, w := range p.Weeks {
		total += w.Load().Total
	}
	if math.Abs(total-truth.Load) > 1e-6*truth.Load {
		t.Errorf("load %v, want %v", total, truth.Load)
	}
}

func TestWindow(t *testing.T) {
	r := New(Options{Now: monday, Weeks: 4, Recent: 2})
	for i := range 10 {
		r.Add(session(string(rune('a'+i)), monday.AddDate(0, 0, -7*i).Add(-time.Hour), 5))
	}
	p := r.Squad().Players[0]
	if len(p.Weeks) != 4 || p.Sessions != 10 || len(p.Recent) != 2 || p.Recent[0].ID != "a" {
		t.Errorf("%d weeks, %d sessions, %d recent", len(p.Weeks), p.Sessions, len(p.Recent))
	}
}

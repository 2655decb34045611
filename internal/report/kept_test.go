package report_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
	"coldfloor/internal/report"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// Every view of a review is the same to the byte the second time, when it is of
// what was kept beside the journals.
func TestViewsOfWhatWasKept(t *testing.T) {
	dir := t.TempDir()
	now := time.Date(2026, 7, 16, 20, 0, 0, 0, time.UTC)
	if err := journalgen.WriteSquad(dir, 12, now); err != nil {
		t.Fatal(err)
	}
	ana, err := os.ReadFile(filepath.Join(dir, "ana.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "old copy.jsonl"), ana[:len(ana)/2], 0o600); err != nil {
		t.Fatal(err)
	}
	plan, err := weeks.Parse("w.yaml", []byte("coldfloor: 1\ntitle: W\nstarts: 2026-06-01\nweeks: 8\ndays:\n  mon: made-up.yaml\n  wed: made-up.yaml\n"), func(name string) (*sessions.Session, error) {
		return sessions.Parse(name, []byte("coldfloor: 1\ntitle: Hall\nblocks:\n  - title: Up\n    exercises:\n      - {name: Hops, reps: 10, contacts: 1}\n"))
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range []review.Options{
		{Now: now, Recent: 30},
		{Now: now, Recent: 30, Plan: func(string) *weeks.Plan { return plan }},
		{Now: now.AddDate(0, 0, 9), Weeks: 4, Recent: 5, Players: []string{"Zoe", "ana"}},
		{Now: now.In(time.FixedZone("", 9*3600)), Recent: 60, Tolerance: review.Tolerance{Time: time.Second, Part: .2}},
	} {
		second := viewsOf(t, dir, o) // but for the first time round
		forget(t, dir)
		first := viewsOf(t, dir, o)
		for name, text := range first {
			if !bytes.Equal(second[name], text) {
				t.Errorf("%s differs", name)
			}
			if len(text) == 0 {
				t.Errorf("%s is empty", name)
			}
		}
		again := viewsOf(t, dir, o)
		for name, text := range first {
			if !bytes.Equal(again[name], text) {
				t.Errorf("%s differs the second time", name)
			}
		}
	}
}

// forget removes what is kept beside journals.
func forget(t *testing.T, dir string) {
	t.Helper()
	kept, err := filepath.Glob(filepath.Join(dir, ".*.review"))
	if err != nil || len(kept) == 0 {
		t.Fatalf("%d files are kept, %v", len(kept), err)
	}
	for _, p := range kept {
		if err := os.Remove(p); err != nil {
			t.Fatal(err)
		}
	}
}

// viewsOf returns what a review of a folder looks like.
func viewsOf(t *testing.T, dir string, o review.Options) map[string][]byte {
	t.Helper()
	squad, _, err := review.Of([]string{dir}, o, runs.Options{})
	if err != nil {
		t.Fatal(err)
	}
	doc, page := report.Of(squad), report.Page(squad)
	var text, whole, html, pdf, one bytes.Buffer
	asJSON, jsonErr := json.MarshalIndent(report.JSONOf(squad), "", "  ")
	_, pdfErr := doc.PDF(&pdf)
	_, pageErr := page.PDF(&one)
	for _, err := range []error{doc.Text(&text, false), doc.Text(&whole, true), doc.HTML(&html), jsonErr, pdfErr, pageErr} {
		if err != nil {
			t.Fatal(err)
		}
	}
	return map[string][]byte{"text": text.Bytes(), "text in full": whole.Bytes(), "HTML": html.Bytes(), "JSON": asJSON, "PDF": pdf.Bytes(), "page": one.Bytes()}
}

package runs_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journalgen"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
)

// BenchmarkReview reviews 3,000 sessions of ten players, and has encoding/json
// read the same bytes into the same structs, in turn. What counts is how many
// times as fast the first is.
func BenchmarkReview(b *testing.B) {
	dir := b.TempDir()
	first := time.Date(2020, 1, 6, 17, 0, 0, 0, time.UTC)
	if _, err := journalgen.Folder(dir, 10, 300, first); err != nil {
		b.Fatal(err)
	}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	var plain, reviewed time.Duration
	for b.Loop() {
		began := time.Now()
		for _, p := range paths {
			decodeAll(b, p)
		}
		plain += time.Since(began)
		began = time.Now()
		if _, _, err := review.Of([]string{dir}, review.Options{Now: first.AddDate(2, 0, 0)}, runs.Options{}); err != nil {
			b.Fatal(err)
		}
		reviewed += time.Since(began)
	}
	b.ReportMetric(plain.Seconds()/reviewed.Seconds(), "×-encoding/json")
}

// decodeAll reads a journal with encoding/json alone, each line into a Line.
func decodeAll(b *testing.B, path string) {
	text, err := os.ReadFile(path)
	if err != nil {
		b.Fatal(err)
	}
	for line := range bytes.Lines(text) {
		var l journal.Line
		if err := json.Unmarshal(line, &l); err != nil {
			b.Fatal(err)
		}
	}
}

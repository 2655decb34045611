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

// BenchmarkReview reads 3,000 sessions. What counts is the ratio of its two
// parts in one run: encoding/json reading the same bytes into the same structs,
// and the whole review.
func BenchmarkReview(b *testing.B) {
	dir := b.TempDir()
	first := time.Date(2020, 1, 6, 17, 0, 0, 0, time.UTC)
	if _, err := journalgen.Folder(dir, 10, 300, first); err != nil {
		b.Fatal(err)
	}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	size := int64(0)
	for _, p := range paths {
		info, err := os.Stat(p)
		if err != nil {
			b.Fatal(err)
		}
		size += info.Size()
	}
	b.Run("json", func(b *testing.B) {
		b.SetBytes(size)
		for b.Loop() {
			for _, p := range paths {
				decodeAll(b, p)
			}
		}
	})
	b.Run("review", func(b *testing.B) {
		b.SetBytes(size)
		for b.Loop() {
			if _, _, err := review.Of([]string{dir}, review.Options{Now: first.AddDate(2, 0, 0)}, runs.Options{}); err != nil {
				b.Fatal(err)
			}
		}
	})
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

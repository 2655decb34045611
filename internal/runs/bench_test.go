//go:build unix

package runs_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journalgen"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
)

// BenchmarkReview reviews 3,000 sessions of ten players, and has encoding/json
// read the same bytes into the same structs, in turn. What counts is how many
// times as fast the first is: by the clock, which needs processors that nobody
// else is at, and by the time of all processors together, which says how much
// less work it is.
func BenchmarkReview(b *testing.B) {
	dir := b.TempDir()
	first := time.Date(2020, 1, 6, 17, 0, 0, 0, time.UTC)
	if _, err := journalgen.Folder(dir, 10, 300, first); err != nil {
		b.Fatal(err)
	}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	var plain, reviewed, plainWork, reviewedWork time.Duration
	for b.Loop() {
		began, work := time.Now(), processor(b)
		for _, p := range paths {
			decodeAll(b, p)
		}
		plain, plainWork = plain+time.Since(began), plainWork+processor(b)-work
		began, work = time.Now(), processor(b)
		if _, _, err := review.Of([]string{dir}, review.Options{Now: first.AddDate(2, 0, 0)}, runs.Options{}); err != nil {
			b.Fatal(err)
		}
		reviewed, reviewedWork = reviewed+time.Since(began), reviewedWork+processor(b)-work
	}
	b.ReportMetric(plain.Seconds()/reviewed.Seconds(), "×-encoding/json")
	b.ReportMetric(plainWork.Seconds()/reviewedWork.Seconds(), "×-encoding/json-by-processor")
}

// processor returns the processor time that the process has used.
func processor(b *testing.B) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		b.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
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

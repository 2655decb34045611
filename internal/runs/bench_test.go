//go:build unix

package runs_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
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

// BenchmarkReview reviews 3,000 sessions of ten players, the first time, and has
// encoding/json read the same bytes into the same structs, in turn. What counts
// is how many times as fast the first is: by the clock, which needs processors
// that nobody else is at, and by the time of all processors together, which says
// how much less work it is.
func BenchmarkReview(b *testing.B) {
	dir := b.TempDir()
	if _, err := journalgen.Folder(dir, 10, 300, firstSession); err != nil {
		b.Fatal(err)
	}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	var plain, reviewed spent
	for b.Loop() {
		plain.on(b, func() {
			for _, p := range paths {
				decodeAll(b, p)
			}
		})
		forget(b, dir)
		reviewed.on(b, func() { reviewOf(b, dir) })
	}
	b.ReportMetric(plain.clock.Seconds()/reviewed.clock.Seconds(), "×-encoding/json")
	b.ReportMetric(plain.processor.Seconds()/reviewed.processor.Seconds(), "×-encoding/json-by-processor")
}

// BenchmarkAlone reviews one journal of twenty years the first time, in one part
// and in as many as there are processors, in turn. What counts is how many times
// as fast the second is, by the clock, and how much more work, by the time of all
// processors together.
func BenchmarkAlone(b *testing.B) {
	dir := b.TempDir()
	if _, err := journalgen.Folder(dir, 1, 3120, firstSession.AddDate(-15, 0, 0)); err != nil {
		b.Fatal(err)
	}
	var whole, parts spent
	for b.Loop() {
		forget(b, dir)
		whole.on(b, func() { runs.InOnePart(func() { reviewOf(b, dir) }) })
		forget(b, dir)
		parts.on(b, func() { reviewOf(b, dir) })
	}
	b.ReportMetric(whole.clock.Seconds()/parts.clock.Seconds(), "×-one-part")
	b.ReportMetric(parts.processor.Seconds()/whole.processor.Seconds(), "×-its-processor-time")
}

// BenchmarkAgain reviews a club of ten players and five years the first time,
// the second, after each journal has grown by a week, and after a small file of
// each player's week has arrived besides, in turn. What counts is the part of the
// first that each of the others takes.
func BenchmarkAgain(b *testing.B) {
	dir := b.TempDir()
	if _, err := journalgen.Folder(dir, 10, 780, firstSession); err != nil {
		b.Fatal(err)
	}
	paths, _ := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	var sizes []int64
	for _, p := range paths {
		info, err := os.Stat(p)
		if err != nil {
			b.Fatal(err)
		}
		sizes = append(sizes, info.Size())
	}
	var first, second, grown, arrived spent
	for b.Loop() {
		forget(b, dir)
		first.on(b, func() { reviewOf(b, dir) })
		second.on(b, func() { reviewOf(b, dir) })
		for i, p := range paths {
			addWeek(b, p, i)
		}
		grown.on(b, func() { reviewOf(b, dir) })
		for i, p := range paths {
			addWeek(b, filepath.Join(dir, "week-"+filepath.Base(p)), 100+i)
		}
		arrived.on(b, func() { reviewOf(b, dir) })
		for i, p := range paths {
			if err := errors.Join(os.Truncate(p, sizes[i]), os.Remove(filepath.Join(dir, "week-"+filepath.Base(p)))); err != nil {
				b.Fatal(err)
			}
		}
	}
	for name, s := range map[string]*spent{"second": &second, "grown": &grown, "arrived": &arrived} {
		b.ReportMetric(s.clock.Seconds()/first.clock.Seconds(), name+"/first")
		b.ReportMetric(s.processor.Seconds()/first.processor.Seconds(), name+"/first-by-processor")
	}
}

// firstSession is when the made-up journals begin.
var firstSession = time.Date(2020, 1, 6, 17, 0, 0, 0, time.UTC)

// spent is the time that something takes.
type spent struct{ clock, processor time.Duration }

// on adds what do takes.
func (s *spent) on(b *testing.B, do func()) {
	began, work := time.Now(), processor(b)
	do()
	s.clock, s.processor = s.clock+time.Since(began), s.processor+processor(b)-work
}

// reviewOf reviews the journals in a folder.
func reviewOf(b *testing.B, dir string) {
	if _, _, err := review.Of([]string{dir}, review.Options{Now: firstSession.AddDate(6, 0, 0)}, runs.Options{}); err != nil {
		b.Fatal(err)
	}
}

// forget removes what was kept beside journals.
func forget(b *testing.B, dir string) {
	kept, _ := filepath.Glob(filepath.Join(dir, ".*.review"))
	for _, p := range kept {
		if err := os.Remove(p); err != nil {
			b.Fatal(err)
		}
	}
}

// addWeek appends three more sessions to a journal.
func addWeek(b *testing.B, path string, seed int) {
	f, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o600)
	if err != nil {
		b.Fatal(err)
	}
	_, err = journalgen.Write(f, journalgen.Options{Player: fmt.Sprintf("Player %03d", seed%100+1), Sessions: 3, First: firstSession.AddDate(5, 1, 0), Seed: uint64(1000 + seed)})
	if err := errors.Join(err, f.Close()); err != nil {
		b.Fatal(err)
	}
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

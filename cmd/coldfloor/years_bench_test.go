package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
)

// BenchmarkYears runs commands with a log of one session, of ten years (1,560
// sessions) and of a hundred (15,600), in turn. What it reports is how many
// times as long each takes as with one session, by the medians, by the clock
// and by processor time: the start does not depend on the years.
//
//	go test ./cmd/coldfloor -run '^$' -bench Years -benchtime 20x
func BenchmarkYears(b *testing.B) {
	dir := b.TempDir()
	program := filepath.Join(dir, "coldfloor")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	sizes := []int{1, 1560, 15_600}
	logs := make([]string, len(sizes))
	for i, n := range sizes {
		var text bytes.Buffer
		o := journalgen.Options{Player: "Ana", Sessions: n, Seed: 1, First: time.Date(2026, 1, 5, 17, 0, 0, 0, time.UTC).AddDate(0, 0, -7*(n/3+1))}
		if _, err := journalgen.Write(&text, o); err != nil {
			b.Fatal(err)
		}
		logs[i] = filepath.Join(dir, fmt.Sprintf("%d.jsonl", n))
		if err := os.WriteFile(logs[i], text.Bytes(), 0o600); err != nil {
			b.Fatal(err)
		}
	}
	run := func(log string, args ...string) (took, work time.Duration) {
		c := exec.Command(program, append(args, "--journal", log)...)
		c.Env = append(os.Environ(), "XDG_CONFIG_HOME="+dir, "XDG_DATA_HOME="+dir, "TZ=UTC")
		began := time.Now()
		_ = c.Run() // check finds something, which is its exit code
		return time.Since(began), c.ProcessState.UserTime() + c.ProcessState.SystemTime()
	}
	for _, log := range logs {
		run(log, "log") // keeps the index
		time.Sleep(100 * time.Millisecond)
		run(log, "log")
	}
	for name, args := range map[string][]string{"log": {"log"}, "rate": {"log", "rate", "last", "--rpe", "5"},
		"preview": {"preview", "hallway-power"}, "check": {"check", "hallway-power"}} {
		b.Run(name, func(b *testing.B) {
			took, work := make([][]time.Duration, len(logs)), make([][]time.Duration, len(logs))
			for b.Loop() {
				for i, log := range logs {
					t, w := run(log, args...)
					took[i], work[i] = append(took[i], t), append(work[i], w)
				}
			}
			median := func(d []time.Duration) float64 { slices.Sort(d); return d[len(d)/2].Seconds() }
			for i, n := range sizes[1:] {
				b.ReportMetric(median(took[i+1])/median(took[0]), fmt.Sprintf("×-of-one-at-%d", n))
				b.ReportMetric(median(work[i+1])/median(work[0]), fmt.Sprintf("×-by-processor-at-%d", n))
			}
		})
	}
}

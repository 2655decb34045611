//go:build scale && unix

package review

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"runtime/debug"
	"runtime/metrics"
	"syscall"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/journalgen"
	"coldfloor/internal/runs"
)

// players is how many players the club has.
var players = flag.Int("club", 200, "players")

// TestScale reviews 200 players with three sessions a week over ten years,
// 312,000 sessions, and the first two years alone: what is alive on the heap is
// to be the same. It writes about 3 GB into the folder for temporary files. The
// processor time is told beside that of encoding/json reading a tenth of the
// same bytes into the same structs.
//
//	go test -tags scale -run Scale -timeout 1h -v ./internal/review
//	go test -tags scale -run Scale -club 20 -v ./internal/review
//
// A smaller club has as many times less of its journals held in memory.
func TestScale(t *testing.T) {
	two, sessions := grown(t, 2)
	ten, all := grown(t, 10)
	if sessions != *players*312 || all != *players*1560 {
		t.Errorf("%d and %d sessions", sessions, all)
	}
	t.Logf("the live heap with ten years is %.2f of that with two", float64(ten)/float64(two))
	if ten > two*6/5 {
		t.Errorf("the live heap reached %d MiB with two years and %d MiB with ten", two>>20, ten>>20)
	}
}

// grown returns the largest live heap of a review of so many years, in bytes, and
// the number of its sessions.
func grown(t *testing.T, years int) (heap uint64, sessions int) {
	dir := t.TempDir()
	defer os.RemoveAll(dir)
	first := time.Date(2016, 1, 4, 17, 0, 0, 0, time.UTC)
	truth, err := journalgen.Folder(dir, *players, years*52*3, first)
	if err != nil {
		t.Fatal(err)
	}
	debug.FreeOSMemory()
	done, peak := make(chan struct{}), make(chan uint64)
	go watch(done, peak)
	began, used, bytes := time.Now(), processor(t), int64(0)
	squad, _, err := Of([]string{dir}, Options{Now: first.AddDate(0, 0, years*52*7)},
		runs.Options{Bound: runs.DefaultBound * *players / 200, Progress: func(_, total int64) { bytes = total / 3 }})
	took := time.Since(began)
	used = processor(t) - used
	close(done)
	heap = <-peak
	if err != nil {
		t.Fatal(err)
	}
	sum := Total{}
	for _, p := range squad.Players {
		sum.Sessions += p.Sessions
		sum.Sets.Done += p.Sets.Done
		sum.Rest.Count += p.Rest.Count
		sum.Contacts += p.Contacts
		sum.Painful += p.Painful
	}
	if sum.Sessions != truth.Sessions || sum.Sets.Done != truth.Sets || sum.Rest.Count != truth.Rests ||
		sum.Contacts != truth.Contacts || sum.Painful != truth.Painful {
		t.Errorf("reviewed %+v, made were %+v", sum, truth)
	}
	t.Logf("%d years: %d sessions, %d lines, %d set and rest lines, %d MB, live heap at most %d MiB, %v, processor %v",
		years, truth.Sessions, truth.Lines, truth.Sets+truth.Rests, bytes/1e6, heap>>20, took.Round(time.Second), used.Round(time.Second))
	plain := processor(t)
	read := decodeTenth(t, dir)
	plain = processor(t) - plain
	t.Logf("encoding/json reads as many bytes in %v of processor time: the review runs at %.2f of its speed",
		time.Duration(float64(plain)*float64(bytes)/float64(read)).Round(time.Second), float64(plain)/float64(read)*float64(bytes)/float64(used))
	return heap, sum.Sessions
}

// processor returns the processor time that the process has used.
func processor(t *testing.T) time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		t.Fatal(err)
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// decodeTenth reads every tenth journal with encoding/json alone, and returns
// the number of bytes.
func decodeTenth(t *testing.T, dir string) (bytes int64) {
	paths, err := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(paths); i += 10 {
		f, err := os.Open(paths[i])
		if err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(f)
		lines.Buffer(nil, 1<<20)
		for lines.Scan() {
			var l journal.Line
			if err := json.Unmarshal(lines.Bytes(), &l); err != nil {
				t.Fatal(err)
			}
			bytes += int64(len(lines.Bytes())) + 1
		}
		if err := errors.Join(lines.Err(), f.Close()); err != nil {
			t.Fatal(err)
		}
	}
	return bytes
}

// watch sends the largest live heap it sees until done, in bytes.
func watch(done <-chan struct{}, peak chan<- uint64) {
	sample := []metrics.Sample{{Name: "/gc/heap/live:bytes"}}
	most := uint64(0)
	for {
		metrics.Read(sample)
		most = max(most, sample[0].Value.Uint64())
		select {
		case <-done:
			peak <- most
			return
		case <-time.After(10 * time.Millisecond):
		}
	}
}

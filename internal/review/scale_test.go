//go:build scale && unix

package review

import (
	"bufio"
	"encoding/json"
	"errors"
	"flag"
	"fmt"
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
//	go test -tags scale -run Scale -v ./internal/review -club 20
//
// A smaller club has as many times less of its journals held in memory.
func TestScale(t *testing.T) {
	two, sessions := grown(t, 2)
	for range 2 { // two years are read so fast that a few collections may all miss the peak
		again, _ := grown(t, 2)
		two = max(two, again)
	}
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
	squad, bytes, one := timed(t, dir, first.AddDate(0, 0, years*52*7))
	close(done)
	heap = <-peak
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
	t.Logf("%d years: %d sessions, %d lines, %d set and rest lines, %d MB, live heap at most %d MiB, %v",
		years, truth.Sessions, truth.Lines, truth.Sets+truth.Rests, bytes/1e6, heap>>20, one)
	clock, plain := time.Now(), processor(t)
	read := decodeTenth(t, dir)
	plain = processor(t) - plain
	part := float64(bytes) / float64(read)
	t.Logf("encoding/json reads as many bytes in %v: the review runs at %.2f of its speed, by processor %.2f", spent{time.Since(clock), plain}.times(part),
		part*time.Since(clock).Seconds()/one.clock.Seconds(), part*plain.Seconds()/one.processor.Seconds())
	later(t, dir, first.AddDate(0, 0, years*52*7), one)
	return heap, sum.Sessions
}

// later reviews the journals again, and after each has grown by a week.
func later(t *testing.T, dir string, now time.Time, one spent) {
	tell := func(what string, s spent) {
		t.Logf("%s: %v, %.3f of the first, by processor %.3f", what, s, s.clock.Seconds()/one.clock.Seconds(), s.processor.Seconds()/one.processor.Seconds())
	}
	_, _, again := timed(t, dir, now)
	tell("the second review", again)
	paths, err := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	if err != nil {
		t.Fatal(err)
	}
	for i, path := range paths {
		f, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
		if err != nil {
			t.Fatal(err)
		}
		_, err = journalgen.Write(f, journalgen.Options{Player: fmt.Sprintf("Player %03d", i+1), Sessions: 3, First: now, Seed: uint64(1_000_000 + i)})
		if err := errors.Join(err, f.Close()); err != nil {
			t.Fatal(err)
		}
	}
	_, _, grown := timed(t, dir, now.AddDate(0, 0, 7))
	tell("after a week", grown)
}

// spent is the time that something took.
type spent struct{ clock, processor time.Duration }

func (s spent) String() string {
	return fmt.Sprintf("%v, processor %v", s.clock.Round(10*time.Millisecond), s.processor.Round(10*time.Millisecond))
}

func (s spent) times(n float64) spent {
	return spent{time.Duration(n * float64(s.clock)), time.Duration(n * float64(s.processor))}
}

// timed reviews a folder, and tells of its bytes and of the time taken.
func timed(t *testing.T, dir string, now time.Time) (squad *Squad, bytes int64, s spent) {
	began, used := time.Now(), processor(t)
	squad, _, err := Of([]string{dir}, Options{Now: now}, runs.Options{Bound: runs.DefaultBound * *players / 200, Progress: func(_, total int64) { bytes = total }})
	if err != nil {
		t.Fatal(err)
	}
	return squad, bytes, spent{time.Since(began), processor(t) - used}
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

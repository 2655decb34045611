//go:build scale

package review

import (
	"os"
	"runtime/debug"
	"runtime/metrics"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
	"coldfloor/internal/runs"
)

// TestScale reviews 200 players with three sessions a week over ten years,
// 312,000 sessions, and the first two years alone: the memory is to be the
// same. It writes about 3 GB into the folder for temporary files.
//
//	go test -tags scale -run Scale -timeout 1h -v ./internal/review
func TestScale(t *testing.T) {
	two, sessions := measured(t, 2)
	ten, all := measured(t, 10)
	if sessions != 62_400 || all != 312_000 {
		t.Errorf("%d and %d sessions", sessions, all)
	}
	if ten > two*5/4 {
		t.Errorf("the heap reached %d MiB with two years and %d MiB with ten", two>>20, ten>>20)
	}
}

// measured returns the largest heap of a review of so many years, in bytes, and
// the number of its sessions.
func measured(t *testing.T, years int) (heap uint64, sessions int) {
	dir := t.TempDir()
	defer os.RemoveAll(dir)
	first := time.Date(2016, 1, 4, 17, 0, 0, 0, time.UTC)
	truth, err := journalgen.Folder(dir, 200, years*52*3, first)
	if err != nil {
		t.Fatal(err)
	}
	debug.FreeOSMemory()
	done, peak := make(chan struct{}), make(chan uint64)
	go watch(done, peak)
	began, bytes := time.Now(), int64(0)
	squad, _, err := Of([]string{dir}, Options{Now: first.AddDate(0, 0, years*52*7)}, runs.Options{Progress: func(_, total int64) { bytes = total }})
	took := time.Since(began)
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
	t.Logf("%d years: %d sessions, %d lines, %d set and rest lines, %d MB, heap at most %d MiB, %v, %d MB/s",
		years, truth.Sessions, truth.Lines, truth.Sets+truth.Rests, bytes/1e6, heap>>20, took.Round(time.Second), int64(float64(bytes)/took.Seconds())/1e6)
	return heap, sum.Sessions
}

// watch sends the largest heap it sees until done, in bytes.
func watch(done <-chan struct{}, peak chan<- uint64) {
	sample := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
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

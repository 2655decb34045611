package run

import (
	"errors"
	"fmt"
	"strings"
	"sync/atomic"
	"testing"

	"coldfloor/internal/journal"
)

var errFull = errors.New("no space left on device")

// Lines that could not be written are tried again with the next, in order.
func TestQueueTriesAgain(t *testing.T) {
	var full atomic.Bool
	full.Store(true)
	var got []int
	tried := make(chan struct{}, 100)
	q := newQueue(func(lines ...journal.Line) error {
		defer func() { tried <- struct{}{} }()
		if full.Load() {
			return errFull
		}
		for _, l := range lines {
			got = append(got, l.N)
		}
		return nil
	})
	q.add(journal.Line{N: 1})
	<-tried
	full.Store(false)
	q.add(journal.Line{N: 2})
	<-tried
	q.add(journal.Line{N: 3})
	if err := q.close(); err != nil || q.trouble() != nil {
		t.Fatal(err)
	}
	q.add(journal.Line{N: 4})
	if fmt.Sprint(got) != "[1 2 3]" {
		t.Errorf("wrote %v", got)
	}
}

func TestQueueTellsWhatIsLost(t *testing.T) {
	q := newQueue(func(...journal.Line) error { return errFull })
	q.add(journal.Line{N: 1})
	if err := q.close(); !errors.Is(err, errFull) || !strings.HasPrefix(err.Error(), "1 line of the journal could not be written") {
		t.Errorf("%v", err)
	}
	if !errors.Is(q.trouble(), errFull) {
		t.Errorf("trouble %v", q.trouble())
	}
}

package run

import (
	"fmt"
	"sync"

	"coldfloor/internal/journal"
)

// queue writes lines in their order, in the background, so that a slow disk
// holds up neither screen nor sound. Lines that could not be written wait for
// the next one to come, and go before it.
type queue struct {
	write func(...journal.Line) error
	wake  chan struct{}
	done  chan struct{}

	mu      sync.Mutex
	pending []journal.Line
	err     error
	closed  bool
}

func newQueue(write func(...journal.Line) error) *queue {
	q := &queue{write: write, wake: make(chan struct{}, 1), done: make(chan struct{})}
	go q.work()
	return q
}

// add hands over a line. After close it does nothing.
func (q *queue) add(l journal.Line) {
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.closed {
		return
	}
	q.pending = append(q.pending, l)
	select {
	case q.wake <- struct{}{}:
	default: // it is awake, and will see the line
	}
}

func (q *queue) work() {
	defer close(q.done)
	for range q.wake {
		q.flush()
	}
	q.flush()
}

// flush tries to write all that is pending.
func (q *queue) flush() {
	q.mu.Lock()
	batch := q.pending[:len(q.pending):len(q.pending)]
	q.mu.Unlock()
	if len(batch) == 0 {
		return
	}
	err := q.write(batch...)
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.err = err; err == nil {
		q.pending = q.pending[len(batch):]
	}
}

// trouble returns why the last try failed, or nil where it did not.
func (q *queue) trouble() error {
	q.mu.Lock()
	defer q.mu.Unlock()
	return q.err
}

// close writes what is pending and ends the queue. The error tells how much
// could not be written. A second close does nothing.
func (q *queue) close() error {
	q.mu.Lock()
	if !q.closed {
		q.closed = true
		close(q.wake)
	}
	q.mu.Unlock()
	<-q.done
	switch n := len(q.pending); n {
	case 0:
		return nil
	case 1:
		return fmt.Errorf("1 line of the journal is lost: %w", q.err)
	default:
		return fmt.Errorf("%d lines of the journal are lost: %w", n, q.err)
	}
}

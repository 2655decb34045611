package run

import (
	"sync"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/units"
)

// tryAgain is how long after a failure lines are tried again, if no new one
// comes before.
const tryAgain = 5 * time.Second

// queue writes lines in their order, in the background, so that a slow disk
// holds up neither screen nor sound. Lines that could not be written wait for
// the next one to come, or for a while, and go before it.
type queue struct {
	write func(...journal.Line) error
	wake  chan struct{}
	done  chan struct{}

	writing sync.Mutex // held by whoever writes

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
	for {
		var again <-chan time.Time
		if q.flush() != nil {
			again = time.After(tryAgain)
		}
		select {
		case _, open := <-q.wake:
			if !open {
				_ = q.flush() // trouble reports a failure
				return
			}
		case <-again:
		}
	}
}

// flush tries to write all that is pending, and returns why some of it could
// not be.
func (q *queue) flush() error {
	q.writing.Lock()
	defer q.writing.Unlock()
	q.mu.Lock()
	batch := q.pending[:len(q.pending):len(q.pending)]
	q.mu.Unlock()
	if len(batch) == 0 {
		return nil
	}
	err := q.write(batch...)
	q.mu.Lock()
	defer q.mu.Unlock()
	if q.err = err; err == nil {
		q.pending = q.pending[len(batch):]
	}
	return err
}

// takeBack removes the last line that was added if it has number n and is not
// written yet, and reports whether it did.
func (q *queue) takeBack(n int) bool {
	q.writing.Lock()
	defer q.writing.Unlock()
	q.mu.Lock()
	defer q.mu.Unlock()
	last := len(q.pending) - 1
	if last < 0 || q.pending[last].N != n {
		return false
	}
	q.pending = q.pending[:last]
	return true
}

// giveUp drops what is pending: it was written elsewhere.
func (q *queue) giveUp() {
	q.writing.Lock()
	defer q.writing.Unlock()
	q.mu.Lock()
	defer q.mu.Unlock()
	q.pending, q.err = nil, nil
}

// trouble returns why the last try failed, or nil if it did not.
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
	if n := len(q.pending); n > 0 {
		return &linesLost{n, q.err}
	}
	return nil
}

// linesLost says how many lines never reached the disk.
type linesLost struct {
	n   int
	err error // why
}

// Error implements error.
func (l *linesLost) Error() string {
	return units.Count(l.n, "line") + " of the journal could not be written: " + l.err.Error()
}

// Unwrap returns why.
func (l *linesLost) Unwrap() error { return l.err }

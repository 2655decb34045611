package journal

import (
	"os"
	"slices"
	"sync"
)

// seen is the overview that a process has of a journal, which it reads once.
type seen struct {
	mu       sync.Mutex
	overview *Overview
}

// Overview returns the overview of the journal as it stands. The first call
// reads the journal, a later one what was appended since. It is safe for
// concurrent use; an Overview itself does not change.
func (j *Journal) Overview() (*Overview, error) {
	j.seen.mu.Lock()
	defer j.seen.mu.Unlock()
	o, err := j.seen.overview.again(j.path)
	if err == nil {
		j.seen.overview = o
	}
	return o, err
}

// again returns the overview with what was appended since; o may be nil.
func (o *Overview) again(path string) (*Overview, error) {
	if o == nil {
		return ReadOverview(path)
	}
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		return ReadOverview(path)
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	switch {
	case err != nil:
		return nil, err
	case info.Size() == o.index.length && o.ended:
		return o, nil
	case info.Size() < o.index.length || !o.ended || !os.SameFile(info, o.file):
		return ReadOverview(path)
	}
	x, err := o.index.grow(f, info.Size())
	if err != nil {
		return nil, err
	}
	return overviewOf(path, f, x)
}

// Recent returns the latest runs that count and that want holds for, n at most,
// with their sets, the earliest first. A nil want holds for all.
func (o *Overview) Recent(n int, want func(*Run) bool) ([]*Run, error) {
	var latest []*Run
	for r := range o.Backward() {
		if len(latest) == n {
			break
		}
		if r.Counts() && (want == nil || want(r)) {
			latest = append(latest, r)
		}
	}
	slices.Reverse(latest)
	return o.Full(latest...)
}

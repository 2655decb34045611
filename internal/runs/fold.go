package runs

import (
	"errors"
	"runtime"
	"sync"

	"coldfloor/internal/journal"
)

// batch is some blocks on their way to be runs.
type batch struct {
	blocks []*block
	runs   []*journal.Run
	err    error
	folded chan struct{} // closed when they are
}

// batchSize is how many blocks are folded at a time.
const batchSize = 32

// errStopped is why no more blocks are wanted.
var errStopped = errors.New("stopped")

// foldAll calls each with every block of sources and the run that it makes, in
// order. Blocks are merged, folded by every processor, and handed on side by
// side; each is called from the caller's goroutine alone.
func foldAll(sources []source, each func(*block, *journal.Run) error) error {
	n := runtime.GOMAXPROCS(0)
	inOrder, toFold, stop := make(chan *batch, 2*n), make(chan *batch), make(chan struct{})
	var all sync.WaitGroup
	for range n {
		all.Go(func() {
			var c codec
			for b := range toFold {
				b.fold(&c)
				close(b.folded)
			}
		})
	}
	var merged error
	all.Go(func() {
		defer close(inOrder)
		defer close(toFold)
		merged = inBatches(sources, func(b *batch) error {
			select {
			case inOrder <- b:
				toFold <- b
				return nil
			case <-stop:
				return errStopped
			}
		})
	})
	err := handOn(inOrder, each)
	close(stop)
	if all.Wait(); err == nil {
		err = merged
	}
	return err
}

// inBatches merges sources, and calls each with some blocks at a time.
func inBatches(sources []source, each func(*batch) error) error {
	b := &batch{folded: make(chan struct{})}
	err := merge(sources, func(one *block) error {
		if b.blocks = append(b.blocks, one); len(b.blocks) < batchSize {
			return nil
		}
		full := b
		b = &batch{folded: make(chan struct{})}
		return each(full)
	})
	if err == nil && len(b.blocks) > 0 {
		err = each(b)
	}
	return err
}

// fold makes runs of the blocks.
func (b *batch) fold(c *codec) {
	b.runs = make([]*journal.Run, len(b.blocks))
	for i, one := range b.blocks {
		lines, err := one.lines(c)
		if err != nil {
			b.err = err
			return
		}
		b.runs[i] = journal.Build(lines) // what is wrong with its lines is counted in it
	}
}

// handOn calls each with the runs of batches.
func handOn(batches <-chan *batch, each func(*block, *journal.Run) error) error {
	for b := range batches {
		<-b.folded
		if b.err != nil {
			return b.err
		}
		for i, r := range b.runs {
			if err := each(b.blocks[i], r); err != nil {
				return err
			}
		}
	}
	return nil
}

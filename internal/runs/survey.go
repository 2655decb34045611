package runs

import (
	"cmp"
	"errors"
	"os"
	"runtime"
	"sync"
	"sync/atomic"

	"coldfloor/internal/journal"
)

// Kind says what is made of every run, and kept beside its journal.
type Kind[T any] struct {
	Name  string               // of what is made, and of all that it depends on but the run: what was made otherwise is made again
	Whole int                  // of how many runs of a journal, the latest ones, the lines are kept too, for Full
	Of    func(*journal.Run) T // keeps nothing of the run beyond what Coder codes
	Coder func() Coder[T]
}

// Coder codes one after the other of what is made of runs.
type Coder[T any] interface {
	Code(*journal.RunCoder, *T)
	Again() // what was read may be written over
}

// Survey is what was made of the runs of many journals. Close it.
//
// What is made of a journal is kept beside it, in a file of its own whose name
// begins with a dot and ends with .review, and is used the next time for as much
// of the journal as is still the same by its length and its CRC-32C; only what
// follows is read, a long stretch in parts side by side. It can be deleted at any
// time; whatever is wrong with it, the journal is read.
//
// What was made is held coded, about a fiftieth of the journals, and beyond a
// bound in a temporary file. In memory there are at least 16 bytes a run.
type Survey[T any] struct {
	Files []File // in the order given

	kind     Kind[T]
	maker    maker
	opts     Options
	store    store
	surveyed []surveyed
	again    []bits            // of each file: the runs that count at an earlier place
	parted   map[Place]*parted // by their first places
	owners   *owners
	batches  sync.Pool
}

// surveyed is what is at hand of one journal's notes.
type surveyed struct {
	ids, sums []uint64 // of every run
	names     []uint32 // of every run; nil: all have the first of called
	called    map[uint32]string
	notes     stored
}

// Make surveys the journals at paths, as Gather finds them, and so are its
// errors.
func Make[T any](paths []string, o Options, k Kind[T]) (*Survey[T], error) {
	files, err := find(paths)
	if err != nil {
		return nil, err
	}
	if o.Bound <= 0 {
		o.Bound = DefaultBound
	}
	s := &Survey[T]{Files: files, kind: k, opts: o, store: store{bound: o.Bound, dir: o.TempDir},
		surveyed: make([]surveyed, len(files)), again: make([]bits, len(files)), parted: map[Place]*parted{}}
	code := k.Coder()
	s.maker = maker{name: k.Name, whole: k.Whole, of: func(r *journal.Run) func(*journal.RunCoder) {
		t := k.Of(r)
		return func(c *journal.RunCoder) { code.Code(c, &t) }
	}}
	if err := s.read(); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	if err := s.settle(); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

// Close gives up the temporary file.
func (s *Survey[T]) Close() error { return s.store.close() }

// read surveys every journal. The error is one of the temporary file.
func (s *Survey[T]) read() error {
	c := &counted{tell: s.opts.Progress, stopped: s.opts.stopped}
	for i := range s.Files {
		if info, err := os.Stat(s.Files[i].Path); err == nil && s.Files[i].Err == nil {
			c.total += info.Size()
		}
	}
	return side(len(s.Files), func(i int) error {
		file := &s.Files[i]
		if file.Err != nil {
			return nil
		}
		buf := buffers.Get().(*[]byte)
		defer buffers.Put(buf)
		n, err := s.maker.survey(file, c, buf)
		if stop := s.opts.stopped(); stop != nil {
			return stop
		}
		if file.Err = err; n == nil {
			return nil
		}
		file.Lines, file.Unknown, file.Damaged, file.First = n.file.Lines, n.file.Unknown, n.file.Damaged, n.file.First
		s.surveyed[i], err = s.hold(n)
		return err
	})
}

// hold keeps notes at hand.
func (s *Survey[T]) hold(n *notes) (x surveyed, err error) {
	x.called = map[uint32]string{}
	x.ids, x.sums = make([]uint64, len(n.heads)), make([]uint64, len(n.heads))
	for i, h := range n.heads {
		x.ids[i], x.sums[i] = h.id, h.sum
		x.called[h.name] = n.tables.Words().List[h.name]
	}
	if len(x.called) > 1 {
		x.names = make([]uint32, len(n.heads))
		for i, h := range n.heads {
			x.names[i] = h.name
		}
	}
	x.notes, err = s.store.put(n.text)
	return x, err
}

// name returns the player's name in a run.
func (x *surveyed) name(i int) string {
	if x.names != nil {
		return x.called[x.names[i]]
	}
	for _, name := range x.called {
		return name
	}
	return ""
}

// side calls do with every number below n, by every processor, and returns an
// error of theirs. After one no more are begun.
func side(n int, do func(i int) error) error {
	var next atomic.Int64
	errs := make([]error, max(1, min(n, runtime.GOMAXPROCS(0))))
	var all sync.WaitGroup
	for worker := range errs {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				if errs[worker] = do(i); errs[worker] != nil {
					next.Store(int64(n))
					return
				}
			}
		})
	}
	all.Wait()
	return cmp.Or(errs...)
}

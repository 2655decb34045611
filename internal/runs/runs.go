// Package runs puts the lines of many journals together into runs, each once
// however often it arrives, in memory that does not grow with the journals: a
// journal that was sent twice, that has grown since, or that was copied from
// another machine adds only what is new in it.
//
// Lines are kept coded, about a quarter of their size. Beyond a bound they move
// to temporary files in the order of their runs' names, and all are merged in
// the end, so that the result is the same as in memory.
package runs

import (
	"cmp"
	"errors"
	"slices"

	"coldfloor/internal/journal"
)

// DefaultBound is how many bytes of coded lines are held in memory: about
// 150,000 lines, twenty-five years of one player.
const DefaultBound = 16 << 20

// Options says how to gather. The zero Options is a good one.
type Options struct {
	Bound    int                     // bytes of coded lines in memory; 0: DefaultBound
	TempDir  string                  // for what goes beyond; empty: the system's
	Progress func(read, total int64) // called now and then with the bytes read
	Folding  func(done, total int64) // called now and then by Pile.Each, with how much of the runs were handed on
	Stop     func() error            // asked now and then: an error ends the work, and nothing is left of it; nil: nothing does
	Same     []string                // names whose runs are one player's, whatever files they came in
}

// How much of the time the reading takes of all there is to do, beside the
// handing on of runs, about.
const (
	MostIsReading = .95 // of a Survey
	TwoThirds     = .67 // of a Pile
)

// Telling returns options with which Progress is told how far the reading and
// the handing on have come together, the first of which takes that part of the
// time.
func (o Options) Telling(part float64) Options {
	tell := o.Progress
	if tell == nil {
		return o
	}
	all := int64(0)
	o.Progress = func(read, total int64) { all = total; tell(int64(part*float64(read)), total) }
	o.Folding = func(done, total int64) {
		tell(int64(float64(all)*(part+(1-part)*float64(done)/float64(max(total, 1)))), all)
	}
	return o
}

// stopped returns why the work is to end, or nil.
func (o *Options) stopped() error {
	if o.Stop == nil {
		return nil
	}
	return o.Stop()
}

// File is one journal as it was read.
type File struct {
	Path    string
	Lines   int   // that could be used
	Unknown int   // lines of a newer version, left out
	Damaged int   // lines left out for damage
	First   error // what was wrong with the first line left out
	Err     error // why the file could not be read to its end
}

// Run is a run with whose it is.
type Run struct {
	*journal.Run
	Player string // as displayed, no two alike; see Pile.Each
	Name   string // of the player alone; two players may have one name
	File   string // the first that it came in
}

// Pile is the lines of many journals. Close it.
type Pile struct {
	Files []File // in the order given

	opts    Options
	shares  []*share // in the order of their files
	counted *counted
}

// Gather reads the journals at paths: files, and folders whose .jsonl files
// are read, those of inner folders among them. The error is one of a path given
// that cannot be read at all; what is wrong inside a folder or a file stands in
// Files, and so does a pipe or a device, which is not read.
func Gather(paths []string, o Options) (*Pile, error) {
	files, err := find(paths)
	if err != nil {
		return nil, err
	}
	if o.Bound <= 0 {
		o.Bound = DefaultBound
	}
	p := &Pile{Files: files, opts: o, counted: &counted{tell: o.Progress, stopped: o.stopped}}
	if err := cmp.Or(p.read(p.share()), o.stopped()); err != nil {
		return nil, errors.Join(err, p.Close())
	}
	return p, nil
}

// InMemory reports whether everything stayed below the bound.
func (p *Pile) InMemory() bool {
	return !slices.ContainsFunc(p.shares, func(s *share) bool { return len(s.spills) > 0 })
}

// Each calls f with every run, in an order that depends on nothing but the
// runs' random names; withdrawn runs and rehearsals are among them.
//
// A run is the player's whose name its settings gave. One without a name is
// the player's that all named runs of its file have; journals that share an
// unnamed run are one player's. Failing that the file names the player: its
// own name, or that of its folder if it has the name every journal has.
//
// Two players may have one name: journals of one name that share no run are
// those of two, unless Options.Same holds the name. Such players are displayed
// with their file.
func (p *Pile) Each(f func(Run) error) error {
	w, err := p.owners()
	if err != nil {
		return err
	}
	total, done := int64(0), int64(0)
	for _, h := range p.shares {
		total += h.taken
	}
	return foldAll(p.sources(false), func(b *block, r *journal.Run) error {
		if err := p.opts.stopped(); err != nil {
			return err
		}
		if done += int64(len(b.data)); p.opts.Folding != nil {
			p.opts.Folding(done, total)
		}
		who := w.of(Key(b.player), b.files[0])
		return f(Run{Run: r, Player: w.display(who), Name: who.name, File: p.Files[b.files[0]].Path})
	})
}

// sources returns where the blocks are, if headsAlone without the lines of
// those in files.
func (p *Pile) sources(headsAlone bool) []source {
	var all []source
	for _, h := range p.shares {
		for _, s := range h.spills {
			all = append(all, s.read(headsAlone))
		}
		all = append(all, inOrder(h.blocks))
	}
	return all
}

// Close gives up the temporary files. The Pile is empty then.
func (p *Pile) Close() error {
	var err error
	for _, h := range p.shares {
		for _, s := range h.spills {
			err = errors.Join(err, s.close())
		}
	}
	p.shares = nil
	return err
}

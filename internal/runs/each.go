package runs

import (
	"cmp"
	"slices"

	"coldfloor/internal/journal"
)

// Note is what was made of a run, with whose it is.
type Note[T any] struct {
	Of     *T
	Player string // as displayed, no two alike; see Pile.Each
	Name   string // of the player alone; two players may have one name
	Place  Place  // for Full

	batch *batchOf[T]
}

// Keep makes Of valid for good. Otherwise it is until the next run.
func (n *Note[T]) Keep() { n.batch.kept = true }

// batchOf is some notes on their way, with their memory, or why there are no
// more.
type batchOf[T any] struct {
	notes []Note[T]
	err   error

	of    []T
	room  *journal.Room
	coder Coder[T]
	kept  bool // somebody holds on to one of them
}

// spare returns a batch to be filled.
func (s *Survey[T]) spare(c *journal.RunCoder) *batchOf[T] {
	b, ok := s.batches.Get().(*batchOf[T])
	if !ok {
		b = &batchOf[T]{notes: make([]Note[T], 0, batchSize), of: make([]T, batchSize), room: journal.NewRoom(batchSize), coder: s.kind.Coder()}
	}
	clear(b.of)
	b.notes = b.notes[:0]
	b.coder.Again()
	c.In(b.room)
	return b
}

// ahead is how many batches of a journal are decoded while those before it are
// handed on.
const ahead = 8

// Each calls f with what was made of every run, those that count and others, in
// the order of the journals given and in these in that of their first lines.
// Whose a run is, is said at Pile.Each.
func (s *Survey[T]) Each(f func(*Note[T]) error) error {
	batches := make([]chan *batchOf[T], len(s.Files))
	for i := range batches {
		batches[i] = make(chan *batchOf[T], ahead)
	}
	stop, stopped := make(chan struct{}), make(chan struct{})
	go func() {
		defer close(stopped)
		_ = side(len(s.Files), func(i int) error { // what fails is handed on
			defer close(batches[i])
			return s.decode(i, func(b *batchOf[T]) error {
				select {
				case batches[i] <- b:
					return b.err
				case <-stop:
					return errStopped
				}
			})
		})
	}()
	err := s.handOn(batches, f)
	close(stop)
	<-stopped
	return err
}

// handOn calls f with the notes of all journals, in order.
func (s *Survey[T]) handOn(batches []chan *batchOf[T], f func(*Note[T]) error) error {
	total, done := int64(0), int64(0)
	for i := range s.surveyed {
		total += int64(len(s.surveyed[i].ids))
	}
	for _, of := range batches {
		for b := range of {
			if err := cmp.Or(b.err, s.opts.stopped()); err != nil {
				return err
			}
			for i := range b.notes {
				if err := f(&b.notes[i]); err != nil {
					return err
				}
			}
			if done += int64(len(b.notes)); s.opts.Folding != nil {
				s.opts.Folding(done, total)
			}
			if !b.kept {
				s.batches.Put(b)
			}
		}
	}
	return nil
}

// decode hands on the notes of a journal, as many as batchSize at a time.
func (s *Survey[T]) decode(file int, on func(*batchOf[T]) error) error {
	if len(s.surveyed[file].ids) == 0 {
		return nil
	}
	buf := buffers.Get().(*[]byte)
	defer buffers.Put(buf)
	text, err := s.store.get(s.surveyed[file].notes, *buf)
	if err != nil {
		return on(&batchOf[T]{err: err})
	}
	if s.surveyed[file].notes.text == nil {
		*buf = text
	}
	n, err := decodeNotes(text)
	if err != nil {
		return on(&batchOf[T]{err: err})
	}
	b := s.spare(n.tables)
	shown := map[string][2]string{}
	for i := range n.heads {
		at := Place{file, i}
		if s.again[file].has(i) {
			continue
		}
		note := Note[T]{Place: at, Of: &b.of[len(b.notes)], batch: b}
		name := s.surveyed[file].name(i)
		if p := s.parted[at]; p != nil {
			name = p.name
			err = s.ofParted(p, note.Of)
		} else {
			err = decodeOne(n, i, b.coder, note.Of)
		}
		if err != nil {
			return on(&batchOf[T]{err: err})
		}
		as, ok := shown[name]
		if !ok {
			who := s.owners.of(Key(name), file)
			as = [2]string{s.owners.display(who), who.name}
			shown[name] = as
		}
		note.Player, note.Name = as[0], as[1]
		if b.notes = append(b.notes, note); len(b.notes) == batchSize {
			if err := on(b); err != nil {
				return err
			}
			b = s.spare(n.tables)
		}
	}
	return on(b)
}

// notes returns the notes of a journal.
func (s *Survey[T]) notes(file int) (*notes, error) {
	text, err := s.store.get(s.surveyed[file].notes, nil)
	if err != nil {
		return nil, err
	}
	return decodeNotes(text)
}

// decodeOne decodes what was made of a run.
func decodeOne[T any](n *notes, i int, coder Coder[T], to *T) error {
	c := n.tables
	c.ID, _ = n.open(&c.Coder, i)
	coder.Code(c, to)
	return c.Err
}

// ofParted decodes what was made of a run of several journals.
func (s *Survey[T]) ofParted(p *parted, to *T) error {
	n, err := decodeNotes(p.text)
	if err != nil {
		return err
	}
	return decodeOne(n, 0, s.kind.Coder(), to)
}

// Full returns runs whole, with their sets and rests, as their journals have
// them. They are in the order given.
func (s *Survey[T]) Full(which []Place) ([]*journal.Run, error) {
	order := make([]int, len(which))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(which[a].file, which[b].file), cmp.Compare(which[a].run, which[b].run))
	})
	var groups [][]int // of one journal
	for i, at := range order {
		if i == 0 || which[order[i-1]].file != which[at].file {
			groups = append(groups, nil)
		}
		last := &groups[len(groups)-1]
		*last = append(*last, at)
	}
	runs := make([]*journal.Run, len(which))
	return runs, side(len(groups), func(g int) error {
		d := s.drawer()
		defer d.close()
		var c codec
		for _, i := range groups[g] {
			var err error
			if runs[i], err = s.full(which[i], d, &c); err != nil {
				return err
			}
			if err := s.opts.stopped(); err != nil {
				return err
			}
		}
		return nil
	})
}

// full returns a run whole.
func (s *Survey[T]) full(at Place, d *drawer, c *codec) (*journal.Run, error) {
	places := []Place{at}
	if p := s.parted[at]; p != nil {
		places = p.places
	} else {
		n, err := d.read(at.file)
		if err != nil {
			return nil, err
		}
		if text, ok := n.lines[at.run]; ok {
			run, _ := n.open(&c.Coder, at.run)
			return c.runOf(run, text)
		}
	}
	lines, run, err := d.lines(places)
	if err != nil {
		return nil, err
	}
	return c.runOf(run, c.lines(lines))
}

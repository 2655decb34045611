package runs

import (
	"cmp"
	"os"
	"slices"

	"coldfloor/internal/journal"
)

// parted is a run whose lines differ from journal to journal.
type parted struct {
	places []Place
	name   string // of the player
	text   []byte // the notes of this run alone, made of all its lines
}

// settle finds the runs that stand in several journals, each of which counts
// once, at its first place, and whose every run is.
func (s *Survey[T]) settle() error {
	s.owners = newOwners(s.Files)
	known := make([]bits, len(s.Files)) // the runs that stand in several journals
	several(s.surveyed, func(places []Place) {
		same := true
		for _, p := range places {
			known[p.file].add(p.run)
			same = same && s.sum(p) == s.sum(places[0])
		}
		for _, p := range places[1:] {
			s.again[p.file].add(p.run)
		}
		if same {
			s.owners.see(s.surveyed[places[0].file].name(places[0].run), filesOf(places))
		} else {
			s.parted[places[0]] = &parted{places: slices.Clone(places)}
		}
	})
	if err := s.join(); err != nil {
		return err
	}
	for _, p := range s.parted {
		s.owners.see(p.name, filesOf(p.places))
	}
	for f := range s.surveyed {
		x := &s.surveyed[f]
		for name := range x.namesBut(known[f]) {
			s.owners.see(name, []int{f})
		}
	}
	s.owners.settle(s.opts.Same)
	return nil
}

func (s *Survey[T]) sum(p Place) uint64 { return s.surveyed[p.file].sums[p.run] }

func filesOf(places []Place) (files []int) {
	for _, p := range places {
		files = append(files, p.file)
	}
	return files
}

// namesBut returns the names of all runs but some.
func (x *surveyed) namesBut(some bits) map[string]bool {
	all := map[string]bool{}
	for i := range x.ids {
		if !some.has(i) {
			if all[x.name(i)] = true; x.names == nil {
				break
			}
		}
	}
	return all
}

// join makes the parted runs of all their lines, those that begin in one journal
// after each other.
func (s *Survey[T]) join() error {
	var all []*parted
	for _, p := range s.parted {
		all = append(all, p)
	}
	slices.SortFunc(all, func(a, b *parted) int {
		return cmp.Or(cmp.Compare(a.places[0].file, b.places[0].file), cmp.Compare(a.places[0].run, b.places[0].run))
	})
	var groups [][]*parted
	for i, p := range all {
		if i == 0 || all[i-1].places[0].file != p.places[0].file {
			groups = append(groups, nil)
		}
		last := &groups[len(groups)-1]
		*last = append(*last, p)
	}
	return side(len(groups), func(i int) error {
		d := s.drawer()
		defer d.close()
		for _, p := range groups[i] {
			lines, run, err := d.lines(p.places)
			if err != nil {
				return err
			}
			v := newSurveyor(nil, s.maker, nil)
			v.heads = make([]head, 1)
			v.put(0, body{run: run}, 0, lines)
			p.name, p.text = v.tables.Words().List[v.heads[0].name], v.encode(nil)
		}
		return nil
	})
}

// drawer reads notes and lines of some journals, a few of which it holds open.
type drawer struct {
	files  []File
	get    func(file int) (*notes, error)
	notes  map[int]*notes
	opened map[int]*os.File
}

// maxOpen is how many journals a drawer holds open at most.
const maxOpen = 16

func (s *Survey[T]) drawer() *drawer {
	return &drawer{files: s.Files, get: s.notes, notes: map[int]*notes{}, opened: map[int]*os.File{}}
}

// read returns the notes of a journal.
func (d *drawer) read(file int) (*notes, error) {
	if n := d.notes[file]; n != nil {
		return n, nil
	}
	if len(d.notes) >= maxOpen {
		d.close()
	}
	n, err := d.get(file)
	if err == nil {
		d.notes[file] = n
	}
	return n, err
}

// open opens a journal.
func (d *drawer) open(file int) (*os.File, error) {
	if f := d.opened[file]; f != nil {
		return f, nil
	}
	f, err := os.Open(d.files[file].Path)
	if err != nil {
		return nil, unreadable(d.files[file].Path, err)
	}
	d.opened[file] = f
	return f, nil
}

// lines returns the lines of a run at all its places, in order, and its name.
func (d *drawer) lines(places []Place) (all []journal.Entry, run string, err error) {
	for _, p := range places {
		n, err := d.read(p.file)
		if err != nil {
			return nil, "", err
		}
		f, err := d.open(p.file)
		if err != nil {
			return nil, "", err
		}
		b, err := n.body(p.run)
		if err != nil {
			return nil, "", err
		}
		lines, sum, err := journal.NewFinder(f).Lines(b.run, b.extents)
		if err == nil && sum != n.heads[p.run].sum {
			err = errChanged
		}
		if err != nil {
			return nil, "", unreadable(d.files[p.file].Path, err)
		}
		all, run = append(all, lines...), b.run
	}
	return all, run, nil
}

// close closes what is open.
func (d *drawer) close() {
	for _, f := range d.opened {
		f.Close()
	}
	clear(d.opened)
	clear(d.notes)
}

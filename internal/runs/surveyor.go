package runs

import (
	"cmp"
	"errors"
	"io"
	"maps"
	"slices"
	"sync"

	"coldfloor/internal/journal"
)

// maker makes what is kept of runs.
type maker struct {
	name  string                                     // of what it makes, and of all that this depends on but the run
	whole int                                        // of how many runs of a journal, the latest ones, the lines are kept
	of    func(*journal.Run) func(*journal.RunCoder) // makes it, and returns what writes it
}

// surveyor makes the notes of one journal.
type surveyor struct {
	notes
	maker
	from    io.ReaderAt
	finder  *journal.Finder
	byID    map[uint64]int           // the number of each run
	touched map[int][]journal.Extent // runs that more lines were read of: where those stand
	codec   codec
	builder journal.Builder
	near    int64       // from where in the journal on the latest runs probably stand
	writing *sync.Mutex // to the tables, which parts of a journal have in common
}

// newSurveyor returns a surveyor of the journal in r that goes on with notes of
// it; nil: it begins.
func newSurveyor(r io.ReaderAt, m maker, n *notes) *surveyor {
	v := &surveyor{maker: m, from: r, finder: journal.NewFinder(r), touched: map[int][]journal.Extent{}, writing: &sync.Mutex{}}
	if n == nil {
		v.notes = notes{tables: &journal.RunCoder{}, lines: map[int][]byte{}}
		v.tables.Words().Number("")
		v.byID = map[uint64]int{}
		return v
	}
	v.notes = *n
	v.text = nil
	v.tables = n.tables.Going()
	v.byID = make(map[uint64]int, len(v.heads))
	for i, h := range v.heads {
		v.byID[h.id] = i
	}
	return v
}

// take takes the lines that follow what was read, up to the end of r. The error
// is that of the journal, which cannot be read to its end.
func (v *surveyor) take(r io.Reader) error {
	var failed error
	for s, err := range journal.Stretches(r, &v.end) {
		var d *journal.Damage
		switch {
		case err == nil:
			v.file.Lines += len(s.Lines)
			v.stretch(s)
			continue
		case !errors.As(err, &d):
			failed = err
			continue
		case d.Whole:
			continue
		case d.Unknown:
			v.file.Unknown++
		default:
			v.file.Damaged++
		}
		if v.file.First == nil {
			v.file.First = d
		}
	}
	return errors.Join(failed, v.again())
}

// settle ends the taking of lines.
func (v *surveyor) settle() error { return errors.Join(v.again(), v.keepLines()) }

// stretch takes lines of a run: all there are, or some that will be read again
// with the others.
func (v *surveyor) stretch(s *journal.Stretch) {
	id := idOf(s.Lines[0].Run)
	if i, ok := v.byID[id]; ok {
		v.touched[i] = append(v.touched[i], s.Extent)
		return
	}
	i := len(v.heads)
	v.byID[id], v.heads = i, append(v.heads, head{id: id})
	var text []byte
	if s.At >= v.near {
		text = v.codec.lines(s.Lines)
	}
	if v.put(i, body{s.Lines[0].Run, []journal.Extent{s.Extent}}, s.Sum, s.Lines); text != nil && v.heads[i].counts {
		v.lines[i] = text
	}
}

// put makes the run of its lines, and keeps what is made of it.
func (v *surveyor) put(i int, b body, sum uint64, lines []journal.Entry) {
	run := v.builder.Build(lines) // what is wrong with its lines is counted in it
	write := v.of(run)
	h := &v.heads[i]
	h.sum, h.start, h.counts, h.name = sum, run.Start.Unix(), run.Counts(), 0
	v.writing.Lock()
	defer v.writing.Unlock()
	if run.Started != nil {
		h.name = uint32(v.tables.Words().Number(run.Started.Player))
	}
	v.tables.Buf = v.tables.Buf[:0]
	b.put(&v.tables.Coder)
	write(v.tables)
	h.at, h.size = uint32(len(v.bodies)), uint32(len(v.tables.Buf))
	v.bodies = append(v.bodies, v.tables.Buf...)
}

// again makes the runs that more lines were read of from all their lines.
func (v *surveyor) again() error {
	for _, i := range slices.Sorted(maps.Keys(v.touched)) {
		b, err := v.body(i)
		if err != nil {
			return err
		}
		for _, e := range v.touched[i] {
			if last := &b.extents[len(b.extents)-1]; last.At+last.Size == e.At {
				last.Size += e.Size
			} else if e.At+e.Size > last.At+last.Size { // else it is a second record of a line
				b.extents = append(b.extents, e)
			}
		}
		lines, sum, err := v.finder.Lines(b.run, b.extents)
		if err != nil {
			return err
		}
		if len(lines) == 0 {
			return errChanged
		}
		delete(v.lines, i)
		v.put(i, b, sum, lines)
	}
	clear(v.touched)
	return nil
}

// errChanged says that what stands in a journal is not what stood there.
var errChanged = errors.New("it was changed while it was read")

// keepLines keeps the lines of the latest runs that count, and of no others.
func (v *surveyor) keepLines() error {
	var latest []int
	for i, h := range v.heads {
		if h.counts {
			latest = append(latest, i)
		}
	}
	slices.SortFunc(latest, func(a, b int) int { return cmp.Or(cmp.Compare(v.heads[b].start, v.heads[a].start), a-b) })
	v.notes.whole = max(v.notes.whole, v.maker.whole)
	latest = latest[:min(len(latest), v.notes.whole)]
	had := v.lines
	v.lines = make(map[int][]byte, len(latest))
	for _, i := range latest {
		text, ok := had[i]
		if !ok {
			b, err := v.body(i)
			if err != nil {
				return err
			}
			lines, _, err := v.finder.Lines(b.run, b.extents)
			if err != nil {
				return err
			}
			text = v.codec.lines(lines)
		}
		v.lines[i] = text
	}
	return nil
}

// survey makes the notes of a journal, with what is kept beside it if that is
// still so, and keeps them there. They are encoded, in the memory of buf.
func (m maker) survey(file *File, c *counted, buf *[]byte) (*notes, error) {
	j, err := openReading(file.Path, c)
	if err != nil {
		return nil, err
	}
	defer j.Close()
	from := buffers.Get().(*[]byte) // of what was kept, which is coded anew into buf
	defer buffers.Put(from)
	had := m.kept(file.Path, j, from)
	if had != nil && had.end.At == j.size && had.whole >= m.whole {
		*buf, *from = *from, *buf
		return had, nil
	}
	if had == nil {
		j.again()
	}
	end, err := journal.LastLineEnd(j, 0, j.size)
	if err != nil {
		return nil, reason(err)
	}
	v := newSurveyor(j, m, had)
	grown := end > v.end.At || v.notes.whole < m.whole
	v.near = j.size - int64(m.whole)*nearRun
	if err = v.readTo(end, j); err == nil {
		if grown {
			v.keep(file.Path, j, buf)
		}
		if end < j.size {
			v.text = nil
			err = errors.Join(v.take(io.LimitReader(j, j.size-end)), v.settle()) // a line that may still grow: it is not kept
		}
	}
	if v.text == nil {
		*buf = v.encode((*buf)[:0])
		v.text = *buf
	}
	return &v.notes, err
}

// nearRun is about how many bytes of a journal a run takes at most.
const nearRun = 12 << 10

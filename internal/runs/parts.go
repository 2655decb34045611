package runs

import (
	"errors"
	"io"
	"runtime"
	"slices"

	"coldfloor/internal/journal"
)

// leastPart is the least of a journal that is worth a goroutine of its own; a
// variable for the tests.
var leastPart int64 = 1 << 20

// parts returns how many parts a stretch of a journal is read in, side by side: as
// many as its share of the processors, with all that is read shared out among them.
func (c *counted) parts(size int64) int {
	of := max(c.total, size, 1)
	share := (size*int64(runtime.GOMAXPROCS(0)) + of - 1) / of
	return int(max(1, min(share, size/leastPart)))
}

// readTo takes the lines that follow what was read, up to a line's end, in parts
// side by side.
func (v *surveyor) readTo(end int64, j *reading) error {
	all := journal.Extent{At: v.end.At, Size: end - v.end.At, Before: v.end.Before}
	parts, err := journal.Cut(j, all, j.all.parts(all.Size))
	if err != nil {
		parts, err = []journal.Extent{all}, nil // as far as it can be read
	}
	makers, from := []*surveyor{v}, []*reading{j}
	for _, p := range parts[1:] {
		makers, from = append(makers, v.beside(p)), append(from, j.beside(p.At))
	}
	errs := make([]error, len(parts))
	_ = side(len(parts), func(i int) error {
		errs[i] = makers[i].take(io.LimitReader(from[i], parts[i].Size))
		return nil
	})
	for i, p := range makers { // what follows a part that cannot be read is not known
		if i > 0 {
			j.join(from[i])
			err = v.join(p)
			makers[i] = nil // and its memory is free
		}
		if err = errors.Join(err, errs[i]); err != nil {
			break
		}
	}
	return errors.Join(err, v.settle())
}

// beside returns a surveyor of what stands from p on, that knows nothing of what
// stands before but the tables, which both write to.
func (v *surveyor) beside(p journal.Extent) *surveyor {
	other := newSurveyor(v.from, v.maker, nil)
	other.end = journal.Extent{At: p.At, Before: p.Before}
	other.near, other.tables, other.writing = v.near, v.tables, v.writing
	return other
}

// join takes what was made of the part that follows. Runs that began before are
// to be made again of the lines in both.
func (v *surveyor) join(later *surveyor) error {
	v.end = later.end
	v.file.Lines += later.file.Lines
	v.file.Unknown += later.file.Unknown
	v.file.Damaged += later.file.Damaged
	if v.file.First == nil {
		v.file.First = later.file.First
	}
	v.heads, v.bodies = slices.Grow(v.heads, len(later.heads)), slices.Grow(v.bodies, len(later.bodies))
	for k, h := range later.heads {
		if i, ok := v.byID[h.id]; ok {
			b, err := later.body(k)
			if err != nil {
				return err
			}
			v.touched[i] = append(v.touched[i], b.extents...)
			continue
		}
		i := len(v.heads)
		if text, ok := later.lines[k]; ok {
			v.lines[i] = text
		}
		text := later.bodies[h.at:][:h.size]
		h.at = uint32(len(v.bodies))
		v.byID[h.id], v.heads, v.bodies = i, append(v.heads, h), append(v.bodies, text...)
	}
	return nil
}

package runs

import (
	"bytes"
	"cmp"
	"slices"

	"coldfloor/internal/journal"
)

// block is the lines of one run, coded, or some of them.
type block struct {
	run    string
	player string // as the run's start gives it
	files  []int  // that the lines came in, each once, rising
	data   []byte // every line with its length before it, in the order they came
}

// cost is about how much memory a block takes beside its data, in bytes.
const cost = 200

// add appends a line to the data of b that are kept apart, and returns them.
func (b *block) add(data []byte, c *codec, file int, l *journal.Line) []byte {
	if l.Started != nil {
		l.Started.Text = ""
		b.player = l.Started.Player
	}
	c.Buf = c.Buf[:0]
	c.line(l)
	b.came(file)
	return appendBytes(data, c.Buf)
}

// came notes that lines came in file.
func (b *block) came(file int) {
	if i, found := slices.BinarySearch(b.files, file); !found {
		b.files = slices.Insert(b.files, i, file)
	}
}

// join takes the lines of a later block of the same run.
func (b *block) join(later *block) {
	if b.player == "" {
		b.player = later.player
	}
	for _, f := range later.files {
		b.came(f)
	}
	b.data = append(b.data, later.data...)
}

// count returns the number of lines, those that stand twice counted twice.
func (b *block) count() int {
	n := 0
	for rest := b.data; len(rest) > 0; n++ {
		_, rest = cutBytes(rest)
	}
	return n
}

// coded is one line of a block.
type coded struct {
	entry journal.Entry
	data  []byte
}

// lines decodes a block's lines, one at least, in their order within the run, one
// that arrived several times once. They are valid until c decodes others.
func (b *block) lines(c *codec) ([]journal.Entry, error) {
	c.entries, c.sets, c.rests = slices.Grow(c.entries[:0], b.count()), c.sets[:0], c.rests[:0]
	c.Reading = true
	rising := true
	for rest := b.data; len(rest) > 0; {
		if c.Buf, rest = cutBytes(rest); c.Buf == nil {
			return nil, errShort
		}
		n := len(c.entries)
		c.entries = append(c.entries, journal.Entry{Line: journal.Line{Run: b.run}})
		c.Err = nil
		if c.line(&c.entries[n].Line); c.Err != nil || c.entries[n].Check() != nil {
			return nil, errShort
		}
		rising = rising && (n == 0 || c.entries[n-1].N < c.entries[n].N)
	}
	switch {
	case len(c.entries) == 0:
		return nil, errShort
	case !rising:
		return b.once(c.entries), nil
	}
	return c.entries, nil
}

// once puts lines in their order, those that say the same once.
func (b *block) once(lines []journal.Entry) []journal.Entry {
	all := make([]coded, len(lines))
	rest := b.data
	for i := range lines {
		all[i].entry = lines[i]
		all[i].data, rest = cutBytes(rest)
	}
	slices.SortStableFunc(all, func(x, y coded) int { return cmp.Compare(x.entry.N, y.entry.N) })
	lines = lines[:0]
	first := 0 // of those of one number
	for i := range all {
		if all[i].entry.N != all[first].entry.N {
			first = i
		}
		if !slices.ContainsFunc(all[first:i], func(x coded) bool { return bytes.Equal(x.data, all[i].data) }) {
			lines = append(lines, all[i].entry)
		}
	}
	return lines
}

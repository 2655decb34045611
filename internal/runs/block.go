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

// add appends a line.
func (b *block) add(c *codec, file int, l *journal.Line) {
	if l.Started != nil {
		l.Started.Text = ""
		b.player = l.Started.Player
	}
	c.Buf = c.Buf[:0]
	c.line(l)
	b.data = appendBytes(b.data, c.Buf)
	b.came(file)
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
	line journal.Line
	data []byte
}

// lines decodes a block's lines, in their order within the run, one that
// arrived several times once.
func (b *block) lines(c *codec) (lines []journal.Line, err error) {
	all := make([]coded, 0, b.count())
	for rest := b.data; len(rest) > 0; {
		var data []byte
		if data, rest = cutBytes(rest); data == nil {
			return nil, errShort
		}
		all = append(all, coded{line: journal.Line{Run: b.run}, data: data})
		c.Reading, c.Buf, c.Err = true, data, nil
		if c.line(&all[len(all)-1].line); c.Err != nil {
			return nil, c.Err
		}
	}
	slices.SortStableFunc(all, func(x, y coded) int { return cmp.Compare(x.line.N, y.line.N) })
	lines = make([]journal.Line, 0, len(all))
	first := 0 // of those of one number
	for i := range all {
		if all[i].line.N != all[first].line.N {
			first = i
		}
		if !slices.ContainsFunc(all[first:i], func(x coded) bool { return bytes.Equal(x.data, all[i].data) }) {
			lines = append(lines, all[i].line)
		}
	}
	return lines, nil
}

package runs

import (
	"encoding/binary"
	"errors"
	"hash/fnv"
	"slices"

	"coldfloor/internal/compact"
	"coldfloor/internal/journal"
)

// notes is what was made of the runs of one journal, as it is kept: what all
// have in common, a head for each, their bodies, and the lines of some.
type notes struct {
	file   File           // what was read: the counts and the first damage
	end    journal.Extent // of what was read: where it ends, and the lines before that
	whole  int            // of how many runs, the latest ones, the lines are there
	tables *journal.RunCoder
	heads  []head
	bodies []byte
	lines  map[int][]byte // of a run by its number: coded
	text   []byte         // all of it, encoded; nil: it was not yet
}

// head is what is looked at of a run before it is decoded.
type head struct {
	id, sum  uint64 // of its name and of its lines
	start    int64  // Unix time
	at, size uint32 // of its body
	name     uint32 // of the player, in the tables; see counts
	counts   bool
}

// headSize is how many bytes a head takes.
const headSize = 36

// countsBit is set in the name of a run that counts.
const countsBit = 1 << 31

// idOf returns a number that stands for a run's name, which is random: of ten
// million runs two would have one number once in a hundred thousand times.
func idOf(run string) uint64 {
	h := fnv.New64a()
	_, _ = h.Write([]byte(run))
	return h.Sum64()
}

// body is what is kept of a run before what its maker has to say.
type body struct {
	run     string
	extents []journal.Extent // where its lines stand
}

// codeExtent returns what codes an extent.
func codeExtent(c *compact.Coder) func(*journal.Extent) {
	return func(e *journal.Extent) {
		codeInt64(c, &e.At)
		codeInt64(c, &e.Size)
		c.Int(&e.Before)
	}
}

// put writes b, so that its extents can be passed over.
func (b *body) put(c *compact.Coder) {
	extents := compact.Coder{}
	compact.List(&extents, &b.extents, codeExtent(&extents))
	c.Text(&b.run)
	c.Buf = appendBytes(c.Buf, extents.Buf)
}

func codeInt64(c *compact.Coder, p *int64) {
	v := int(*p)
	c.Int(&v)
	*p = int64(v)
}

// encode writes notes at the end of b. Bodies are put in the order of their
// heads.
func (n *notes) encode(b []byte) []byte {
	c := compact.Coder{Buf: b}
	n.code(&c)
	c.Buf = append(c.Buf, n.tablesText()...)
	count := len(n.heads)
	c.Int(&count)
	total := 0
	for _, h := range n.heads {
		total += int(h.size)
	}
	c.Int(&total)
	c.Buf = slices.Grow(c.Buf, count*headSize+total)
	at := uint32(0)
	for _, h := range n.heads {
		h.at, at = at, at+h.size
		c.Buf = h.append(c.Buf)
	}
	for _, h := range n.heads {
		c.Buf = append(c.Buf, n.bodies[h.at:h.at+h.size]...)
	}
	for i := range n.heads {
		if text, ok := n.lines[i]; ok {
			c.Int(&i)
			c.Buf = appendBytes(c.Buf, text)
		}
	}
	return c.Buf
}

// tablesText codes the tables, with their length before them.
func (n *notes) tablesText() []byte {
	at := len(n.tables.Buf)
	n.tables.Tables()
	text := appendBytes(nil, n.tables.Buf[at:])
	n.tables.Buf = n.tables.Buf[:at]
	return text
}

// code codes all of notes but the runs.
func (n *notes) code(c *compact.Coder) {
	first := ""
	if n.file.First != nil {
		first = n.file.First.Error()
	}
	c.Int(&n.file.Lines)
	c.Int(&n.file.Unknown)
	c.Int(&n.file.Damaged)
	c.Text(&first)
	codeInt64(c, &n.end.At)
	c.Int(&n.end.Before)
	c.Int(&n.whole)
	if c.Reading && first != "" {
		n.file.First = errors.New(first)
	}
}

// decodeNotes reads notes. They hold on to text.
func decodeNotes(text []byte) (*notes, error) {
	c := compact.Coder{Reading: true, Buf: text}
	n := &notes{lines: map[int][]byte{}, tables: &journal.RunCoder{}}
	n.code(&c)
	var tables []byte
	tables, c.Buf = cutBytes(c.Buf)
	n.tables.Reading, n.tables.Buf = true, tables
	n.tables.Tables()
	words := n.tables.Words().List
	if len(words) == 0 || words[0] != "" { // which is the name of whoever has none
		return nil, compact.ErrShort
	}
	count, total := 0, 0
	c.Int(&count)
	c.Int(&total)
	if c.Err != nil || n.tables.Err != nil || n.end.At < 0 || n.end.Before < 0 || count < 0 || count > len(c.Buf)/headSize || total < 0 || total > len(c.Buf)-count*headSize {
		return nil, compact.ErrShort
	}
	heads := c.Buf[:count*headSize]
	n.bodies, c.Buf = c.Buf[len(heads):][:total:total], c.Buf[len(heads)+total:]
	n.heads = make([]head, count)
	for i := range n.heads {
		n.heads[i] = headAt(heads[i*headSize:])
		if h := n.heads[i]; uint64(h.at)+uint64(h.size) > uint64(total) || int(h.name) >= len(words) {
			return nil, compact.ErrShort
		}
	}
	for len(c.Buf) > 0 {
		i, text := 0, []byte(nil)
		c.Int(&i)
		if text, c.Buf = cutBytes(c.Buf); text == nil || i < 0 || i >= count {
			return nil, compact.ErrShort
		}
		n.lines[i] = text
	}
	return n, nil
}

// append codes a head.
func (h head) append(b []byte) []byte {
	b = binary.LittleEndian.AppendUint64(b, h.id)
	b = binary.LittleEndian.AppendUint64(b, h.sum)
	b = binary.LittleEndian.AppendUint64(b, uint64(h.start))
	b = binary.LittleEndian.AppendUint32(b, h.at)
	b = binary.LittleEndian.AppendUint32(b, h.size)
	if h.counts {
		h.name |= countsBit
	}
	return binary.LittleEndian.AppendUint32(b, h.name)
}

// headAt decodes a head.
func headAt(b []byte) head {
	u32, u64 := binary.LittleEndian.Uint32, binary.LittleEndian.Uint64
	name := u32(b[32:])
	return head{u64(b), u64(b[8:]), int64(u64(b[16:])), u32(b[24:]), u32(b[28:]), name &^ countsBit, name&countsBit != 0}
}

// open returns the name of a run, and where its lines stand, coded, and leaves
// c where its maker's part begins.
func (n *notes) open(c *compact.Coder, i int) (run string, extents []byte) {
	h := n.heads[i]
	c.Reading, c.Buf = true, n.bodies[h.at:h.at+h.size]
	c.Text(&run)
	if extents, c.Buf = cutBytes(c.Buf); extents == nil {
		c.Err = compact.ErrShort
	}
	return run, extents
}

// body decodes what is kept of a run before its maker's part.
func (n *notes) body(i int) (b body, err error) {
	var c compact.Coder
	b.run, c.Buf = n.open(&c, i)
	compact.List(&c, &b.extents, codeExtent(&c))
	return b, c.Err
}

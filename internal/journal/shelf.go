package journal

import (
	"encoding/binary"
	"errors"
	"hash/crc32"
	"io"
	"math"
	"os"
	"sync"

	"coldfloor/internal/compact"
)

// shelf is the runs of an index as it was kept. Each is decoded when it is
// asked for: a start asks for a few of them, however many there are.
type shelf struct {
	heads  []byte // of every run, the earliest first, headSize each
	starts []*Started
	coded  *io.SectionReader // the runs
	file   *os.File          // that they are in

	journal func() ([]*Run, error) // reads the same runs from the journal
	reading sync.Once              // of fresh
	fresh   []*Run                 // the journal's
}

// headSize is how many bytes a head takes.
const headSize = 32

// head is the coded part of a run that is looked at before the rest is decoded: a
// start looks at the heads of all runs.
type head []byte

func (h head) latest() int64  { return int64(binary.LittleEndian.Uint64(h)) }              // the second in which something of it was last
func (h head) name() uint32   { return binary.LittleEndian.Uint32(h[8:]) }                 // hashOf its name
func (h head) source() uint32 { return binary.LittleEndian.Uint32(h[12:]) }                // hashOf the session's source
func (h head) player() uint32 { return binary.LittleEndian.Uint32(h[16:]) }                // hashOf the player's name
func (h head) has(t int) bool { return binary.LittleEndian.Uint32(h[20:])&uint32(t) != 0 } // any of those traits
func (h head) at() uint32     { return binary.LittleEndian.Uint32(h[24:]) }                // where the run begins in shelf.coded
func (h head) sum() uint32    { return binary.LittleEndian.Uint32(h[28:]) }                // CRC-32C of the run as it is coded

// appendHead appends the head of a run and, if it is shelved, of its place and
// what is coded there.
func appendHead(b []byte, r *Run, at int, coded []byte) []byte {
	var source, player uint32
	if r.Started != nil {
		source, player = hashOf(r.Started.Source), hashOf(r.Started.Player)
	}
	b = binary.LittleEndian.AppendUint64(b, uint64(latestOf(r)))
	for _, v := range [...]uint32{hashOf(r.ID), source, player, uint32(traits(r)), uint32(at), crc32.Checksum(coded, castagnoli)} {
		b = binary.LittleEndian.AppendUint32(b, v)
	}
	return b
}

// latestOf returns the second in which something of a run was last.
func latestOf(r *Run) int64 {
	last := later(later(r.Start, r.End()), r.Removed)
	if at, jumped := r.Jumped(); jumped {
		last = later(last, at)
	}
	return last.Unix()
}

func hashOf(name string) uint32 { return crc32.Checksum([]byte(name), castagnoli) }

// head returns the head of a run.
func (s *shelf) head(i int) head { return s.heads[i*headSize:][:headSize] }

// len returns the number of runs; a nil shelf has none.
func (s *shelf) len() int {
	if s == nil {
		return 0
	}
	return len(s.heads) / headSize
}

// shelve codes the heads of an index's runs, which are in order, and returns the
// runs.
func (k *keeper) shelve(runs []*Run) []byte {
	body := keeper{number: k.number}
	var heads []byte
	for _, r := range runs {
		at := len(body.Buf)
		body.run(&r)
		heads = appendHead(heads, r, at, body.Buf[at:])
	}
	if len(body.Buf) > math.MaxUint32 || len(heads) > math.MaxInt32 {
		k.Err = compact.ErrShort
	}
	n := len(runs)
	k.Int(&n)
	k.Buf = append(k.Buf, heads...)
	return body.Buf
}

// shelf reads what shelve coded.
func (k *keeper) shelf() *shelf {
	n := 0
	if k.Int(&n); n < 0 || n > len(k.Buf)/headSize {
		k.Err, k.Buf = compact.ErrShort, nil
		return nil
	}
	s := &shelf{heads: k.Buf[:n*headSize], starts: k.starts}
	k.Buf = nil
	return s
}

// place returns where a run stands in coded.
func (s *shelf) place(i int) (at, end int64) {
	if end = s.coded.Size(); i+1 < s.len() {
		end = int64(s.head(i + 1).at())
	}
	return int64(s.head(i).at()), end
}

// close closes the file of a shelf that nobody uses any more; nil has none.
func (s *shelf) close() {
	if s != nil && s.file != nil {
		s.file.Close()
	}
}

// shelfReader decodes single runs of a shelf. The runs before one that was asked
// for are the likeliest next, and are read with it.
type shelfReader struct {
	shelf *shelf
	keeper
	from  int64  // of what was read
	text  []byte // what was read; decoded runs hold on to it
	whole string // the same, if the texts of the runs are to be parts of it
}

// readAhead is the least number of bytes read at a time.
const readAhead = 4096

// reader returns what decodes single runs.
func (s *shelf) reader() *shelfReader {
	k := &shelfReader{shelf: s, keeper: keeper{starts: s.starts}}
	k.Reading = true
	return k
}

// run returns a run: that of the journal, if what is kept is damaged.
func (k *shelfReader) run(i int) *Run {
	r, err := k.decode(i)
	if err != nil {
		r = k.shelf.reread()[i]
	}
	return r
}

func (k *shelfReader) decode(i int) (r *Run, err error) {
	at, end := k.shelf.place(i)
	if at > end || end > k.shelf.coded.Size() {
		return nil, compact.ErrShort
	}
	if at < k.from || end > k.from+int64(len(k.text)) {
		k.from = max(0, min(at, end-readAhead))
		k.text = make([]byte, end-k.from)
		if n, err := k.shelf.coded.ReadAt(k.text, k.from); n < len(k.text) {
			k.text = nil
			return nil, err
		}
	}
	k.Buf, k.Err = k.text[at-k.from:end-k.from], nil
	if k.whole != "" {
		k.Source = k.whole[at:end]
	}
	if crc32.Checksum(k.Buf, castagnoli) != k.shelf.head(i).sum() {
		return nil, compact.ErrShort
	}
	k.keeper.run(&r)
	return r, k.Err
}

// all returns every run: those of the journal, if what is kept is damaged.
func (s *shelf) all() []*Run {
	runs, err := s.decode()
	if err != nil {
		runs = s.reread()
	}
	return runs
}

// decode decodes every run.
func (s *shelf) decode() ([]*Run, error) {
	n := s.len()
	if n == 0 {
		return nil, nil
	}
	k := s.reader()
	k.text = make([]byte, s.coded.Size())
	if n, err := s.coded.ReadAt(k.text, 0); n < len(k.text) {
		return nil, err
	}
	k.whole = string(k.text)
	k.space = space{runs: make([]Run, n), leans: make([]lean, n), chunk: 4096}
	runs := make([]*Run, n)
	for i := range runs {
		var err error
		if runs[i], err = k.decode(i); err != nil {
			return nil, err
		}
	}
	return runs, nil
}

// reread returns the runs of the journal that the shelf is of.
func (s *shelf) reread() []*Run {
	s.reading.Do(func() {
		var err error
		if s.fresh, err = s.journal(); err == nil && len(s.fresh) != s.len() {
			err = errors.New("it is another one now")
		}
		if err != nil {
			panic("the journal cannot be read any more, nor its index: " + err.Error())
		}
	})
	return s.fresh
}

// find returns the place of the run of that name, or -1.
func (s *shelf) find(id string) int {
	name := hashOf(id)
	for i := range s.len() {
		if s.head(i).name() == name && s.reader().run(i).ID == id {
			return i
		}
	}
	return -1
}

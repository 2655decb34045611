package journal

import (
	"encoding/binary"
	"hash/crc32"
	"math"

	"coldfloor/internal/compact"
)

// shelf is the runs of an index as it was kept. Each is decoded when it is
// asked for: a start asks for a few of them, however many there are.
type shelf struct {
	heads  []byte // of every run, the earliest first, headSize each
	coded  []byte // the runs
	starts []*Started
}

// headSize is how many bytes a head takes.
const headSize = 28

// head is what is looked at of a run before it is decoded.
type head struct {
	latest int64  // the second in which something of it was last
	at     uint32 // of the run in shelf.coded
	name   uint32 // hashOf its name
	source uint32 // hashOf the session's source
	player uint32 // hashOf the player's name
	traits int
}

// headOf returns the head of a run that is coded at a place.
func headOf(r *Run, at int) head {
	h := head{latest: latestOf(r), at: uint32(at), name: hashOf(r.ID), traits: traits(r)}
	if r.Started != nil {
		h.source, h.player = hashOf(r.Started.Source), hashOf(r.Started.Player)
	}
	return h
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

// append codes a head.
func (h head) append(b []byte) []byte {
	b = binary.LittleEndian.AppendUint64(b, uint64(h.latest))
	b = binary.LittleEndian.AppendUint32(b, h.at)
	b = binary.LittleEndian.AppendUint32(b, h.name)
	b = binary.LittleEndian.AppendUint32(b, h.source)
	b = binary.LittleEndian.AppendUint32(b, h.player)
	return binary.LittleEndian.AppendUint32(b, uint32(h.traits))
}

// head returns the head of a run.
func (s *shelf) head(i int) head {
	b := s.heads[i*headSize : (i+1)*headSize]
	u32 := binary.LittleEndian.Uint32
	return head{int64(binary.LittleEndian.Uint64(b)), u32(b[8:]), u32(b[12:]), u32(b[16:]), u32(b[20:]), int(u32(b[24:]))}
}

// len returns the number of runs; a nil shelf has none.
func (s *shelf) len() int {
	if s == nil {
		return 0
	}
	return len(s.heads) / headSize
}

// shelve codes the runs of an index, which are in order.
func (k *keeper) shelve(runs []*Run) {
	body := keeper{number: k.number}
	var heads []byte
	for _, r := range runs {
		heads = headOf(r, len(body.Buf)).append(heads)
		body.run(&r)
	}
	if len(body.Buf) > math.MaxUint32 {
		k.Err = compact.ErrShort
	}
	n := len(runs)
	k.Int(&n)
	k.Buf = append(append(k.Buf, heads...), body.Buf...)
}

// shelf reads what shelve coded, except for the runs themselves.
func (k *keeper) shelf() *shelf {
	n := 0
	if k.Int(&n); n < 0 || n > len(k.Buf)/headSize {
		k.Err, k.Buf = compact.ErrShort, nil
		return nil
	}
	s := &shelf{heads: k.Buf[:n*headSize], coded: k.Buf[n*headSize:], starts: k.starts}
	k.Buf = nil
	return s
}

// reader returns what decodes single runs.
func (s *shelf) reader() *keeper {
	k := &keeper{starts: s.starts}
	k.Reading = true
	return k
}

// decode decodes a run. What is kept is held against its checksum and was
// decoded once when it was written: it can be decoded.
func (s *shelf) decode(k *keeper, i int) *Run {
	var r *Run
	k.Buf = s.coded[s.head(i).at:]
	if k.run(&r); k.Err != nil {
		panic("the journal's index, which fits its checksum, cannot be decoded; it can be deleted")
	}
	return r
}

// all decodes every run.
func (s *shelf) all() ([]*Run, error) {
	n := s.len()
	if n == 0 {
		return nil, nil
	}
	k := s.reader()
	k.Buf, k.Source = s.coded, string(s.coded)
	k.space = space{runs: make([]Run, n), leans: make([]lean, n), chunk: 4096}
	runs := make([]*Run, n)
	for i := range runs {
		if k.run(&runs[i]); k.Err != nil {
			return nil, k.Err
		}
	}
	return runs, nil
}

// find returns the place of the run of that name, or -1.
func (s *shelf) find(id string) int {
	name := hashOf(id)
	for i := range s.len() {
		if h := s.head(i); h.name == name {
			if r := s.decode(s.reader(), i); r.ID == id {
				return i
			}
		}
	}
	return -1
}

package runs

import (
	"cmp"
	"slices"
)

// Place is where a run stands: its file, and its number in that.
type Place struct{ file, run int }

// bits is a set of small numbers.
type bits []uint64

func (b bits) has(i int) bool { return i>>6 < len(b) && b[i>>6]>>(i&63)&1 == 1 }

func (b *bits) add(i int) {
	for i>>6 >= len(*b) {
		*b = append(*b, 0)
	}
	(*b)[i>>6] |= 1 << (i & 63)
}

// shards is in how many parts runs are looked through for those that stand
// several times, so that not all are in memory at once.
const shards = 16

// numbered is a run by what stands for its name.
type numbered struct {
	id        uint64
	file, run uint32
}

// several calls each with the places of every run that stands in several of the
// journals, the earliest first.
func several(files []surveyed, each func([]Place)) {
	if len(files) < 2 {
		return
	}
	var all []numbered
	var places []Place
	for shard := range uint64(shards) {
		all = all[:0]
		for f := range files {
			for i, id := range files[f].ids {
				if id%shards == shard {
					all = append(all, numbered{id, uint32(f), uint32(i)})
				}
			}
		}
		slices.SortFunc(all, func(a, b numbered) int { return cmp.Or(cmp.Compare(a.id, b.id), cmp.Compare(a.file, b.file)) })
		for len(all) > 0 {
			n := 1
			for n < len(all) && all[n].id == all[0].id {
				n++
			}
			if n > 1 {
				places = places[:0]
				for _, x := range all[:n] {
					places = append(places, Place{int(x.file), int(x.run)})
				}
				each(places)
			}
			all = all[n:]
		}
	}
}

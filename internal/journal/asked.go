package journal

import (
	"cmp"
	"iter"
	"math"
	"slices"
	"time"
)

// What is asked of an overview without every run of it being decoded.

// Runs returns all runs, lean, the earliest first. The list is the caller's,
// the runs are not.
func (o *Overview) Runs() []*Run {
	o.decode.Do(func() { o.runs = o.index.all().runs })
	return slices.Clone(o.runs)
}

// Backward yields the runs, lean, the latest first.
func (o *Overview) Backward() iter.Seq[*Run] {
	return func(yield func(*Run) bool) {
		for r := range o.index.backward(func(head) bool { return true }) {
			if !yield(r) {
				return
			}
		}
	}
}

// Listed returns the number of runs that were not withdrawn.
func (o *Overview) Listed() int {
	n := 0
	for i := range o.index.shelf.len() {
		if !o.index.shelf.head(i).has(isWithdrawn) && !o.index.gone[i] {
			n++
		}
	}
	for _, r := range o.index.runs {
		if !r.Withdrawn {
			n++
		}
	}
	return n
}

// Since returns the runs of which anything was in the second of t or later, the
// earliest first.
func (o *Overview) Since(t time.Time) []*Run {
	runs := slices.Collect(o.index.backward(func(h head) bool { return h.latest() >= t.Unix() }))
	slices.Reverse(runs)
	return runs
}

// Last returns the run that at gives the latest moment of: its start, its end,
// or when it was withdrawn. Of those of one moment it is the last; nil if at
// gives none.
func (o *Overview) Last(at func(*Run) (time.Time, bool)) *Run {
	var last *Run
	var latest time.Time
	for r := range o.index.backward(func(h head) bool { return last == nil || h.latest() >= latest.Unix() }) {
		if t, ok := at(r); ok && (last == nil || t.After(latest)) {
			last, latest = r, t
		}
	}
	return last
}

// Lately returns the runs of which anything was in the second of t or later and,
// unless one of them is the player's and counts, the last one that is and does;
// the earliest first.
func (o *Overview) Lately(t time.Time, player string) []*Run {
	own := func(r *Run) bool { return r.Counts() && r.Started != nil && r.Started.Player == player }
	runs := o.Since(t)
	if slices.ContainsFunc(runs, own) {
		return runs
	}
	hash := hashOf(player)
	for last := range o.index.backward(func(h head) bool { return h.player() == hash && h.has(isCounted) }) {
		if own(last) {
			at, _ := slices.BinarySearchFunc(runs, last, compareRuns)
			return slices.Insert(runs, at, last)
		}
	}
	return runs
}

// Unfinished returns the runs that have no end and were not withdrawn, the
// earliest first.
func (o *Overview) Unfinished() []*Run {
	runs := slices.Collect(o.index.backward(func(h head) bool { return h.has(isOpen) }))
	slices.Reverse(runs)
	return runs
}

// LastDone returns when the session of each source was done last: of a built-in
// session's name, or a file's absolute path. One that never was is left out.
func (o *Overview) LastDone(sources ...string) map[string]time.Time {
	last := map[string]time.Time{}
	latest := map[uint32]int64{} // by the source's hash; two sources may have the same
	for _, s := range sources {
		latest[hashOf(s)] = math.MinInt64
	}
	for r := range o.index.backward(func(h head) bool {
		known, asked := latest[h.source()]
		return asked && h.latest() >= known && h.has(isCounted)
	}) {
		if r.Started == nil || !slices.Contains(sources, r.Started.Source) {
			continue
		}
		source, end := r.Started.Source, later(last[r.Started.Source], r.End())
		last[source] = end
		if len(sources) == len(latest) {
			latest[hashOf(source)] = end.Unix()
		}
	}
	return last
}

// backward yields the runs whose head want holds for, from the one that began
// last. Others on the shelf are not decoded.
func (x *index) backward(want func(head) bool) iter.Seq[*Run] {
	return func(yield func(*Run) bool) {
		i, j := x.shelf.len()-1, len(x.runs)-1
		var k *shelfReader
		var next *Run // of the shelf
		if i >= 0 {
			k = x.shelf.reader()
		}
		for {
			for next == nil && i >= 0 {
				if want(x.shelf.head(i)) && !x.gone[i] {
					next = k.run(i)
				}
				i--
			}
			for j >= 0 && !want(appendHead(nil, x.runs[j], 0, nil)) {
				j--
			}
			switch {
			case next == nil && j < 0:
				return
			case next == nil || j >= 0 && compareRuns(x.runs[j], next) > 0:
				if !yield(x.runs[j]) {
					return
				}
				j--
			default:
				if !yield(next) {
					return
				}
				next = nil
			}
		}
	}
}

// compareRuns is the order of time.
func compareRuns(a, b *Run) int { return cmp.Or(a.Start.Compare(b.Start), cmp.Compare(a.ID, b.ID)) }

// all returns an index with every run decoded.
func (x *index) all() *index {
	if x.shelf == nil {
		return x
	}
	runs := x.shelf.all()
	all := *x
	all.shelf, all.gone, all.runs = nil, nil, slices.Clone(x.runs)
	for i, r := range runs {
		if !x.gone[i] {
			all.runs = append(all.runs, r)
		}
	}
	all.sort()
	return &all
}

// fetch makes the runs of the shelf that y holds too ready to be joined.
func (x *index) fetch(y *index) *index {
	if x.shelf == nil {
		return x
	}
	if len(y.runs) > maxFetched {
		return x.all()
	}
	with := *x
	with.runs, with.gone = slices.Clone(x.runs), map[int]bool{}
	for i := range x.gone {
		with.gone[i] = true
	}
	for _, r := range y.runs {
		if i := x.shelf.find(r.ID); i >= 0 && !with.gone[i] {
			with.gone[i] = true
			with.runs = append(with.runs, x.shelf.reader().run(i))
		}
	}
	return &with
}

// maxFetched is of how many runs it is dearer to look for each on the shelf
// than to decode all.
const maxFetched = 64

// Named returns the run of that whole name, lean, or nil.
func (o *Overview) Named(id string) *Run { return o.index.find(id) }

func (x *index) find(id string) *Run {
	if i := slices.IndexFunc(x.runs, func(r *Run) bool { return r.ID == id }); i >= 0 {
		return x.runs[i]
	}
	if i := x.shelf.find(id); i >= 0 && !x.gone[i] {
		return x.shelf.reader().run(i)
	}
	return nil
}

package onscreen

// change writes the cells that differ.
func (p *painter) change(y int, old, next []cell) {
	p.follow(old, next)
	for from, to := 0, 0; from < len(next); from = to {
		for to = from + 1; to < len(next) && next[to] == next[from]; to++ {
		}
		first, last := from, to // of the run, what has to be written
		for first < to && !p.dirty(old, next, first) {
			first++
		}
		for last > first && !p.dirty(old, next, last-1) {
			last--
		}
		if p.cheap(next[from]) {
			p.stretch(y, next, first, last, p.following(next, last))
			continue
		}
		for x := first; x < last; x++ {
			if p.dirty(old, next, x) {
				p.stretch(y, next, x, x+1, p.following(next, x+1))
			}
		}
	}
}

// follow finds out of each cell which one is written next, itself included.
func (p *painter) follow(old, next []cell) {
	p.after = append(p.after[:0], make([]int, len(next)+1)...)
	after := len(next)
	for x := len(next); x >= 0; x-- {
		if x < len(next) && p.dirty(old, next, x) {
			after = x
		}
		p.after[x] = after
	}
}

// following returns the cell that is written at x or after it.
func (p *painter) following(next []cell, x int) cell {
	if p.after[x] < len(next) {
		return next[p.after[x]]
	}
	return blank
}

// anew erases a line from the first cell that differs on, in the ground of its
// last cell, and writes what it holds. That leaves blanks to be passed over,
// whatever the cells are written in.
func (p *painter) anew(y int, old, next []cell) {
	first := 0
	for first < p.width && !p.dirty(old, next, first) {
		first++
	}
	ground := next[p.width-1]
	if first == p.width || !p.erasable(ground) {
		p.change(y, old, next)
		return
	}
	p.move(first, y)
	p.erase(ground)
	p.bare = append(p.bare[:0], next[:first]...)
	for range p.width - first {
		p.bare = append(p.bare, ground)
	}
	p.change(y, p.bare, next)
}

// dirty reports whether cell x has to be written: it changes, or the one before
// it does and was bold. Terminals make a letter bold by drawing it twice, a
// pixel apart, and what it leaves in the next cell stays there.
func (p *painter) dirty(old, next []cell, x int) bool {
	return old[x] != next[x] || x > 0 && old[x-1] != next[x-1] && p.all[old[x-1].look].attrs&bold != 0
}

// nearby is how many cells that stay the same may be written again rather than
// passed over by a movement of the cursor.
const nearby = 8

// stretch writes the cells of line y from one to, not including, another. What
// lies between them and the cursor is written too if that takes fewer bytes than
// moving it. After is what is written next.
func (p *painter) stretch(y int, cells []cell, from, to int, after cell) {
	if from >= to {
		return
	}
	x := p.x
	gap := from - x
	switch {
	case p.y != y || gap < 0 || gap > nearby:
		p.move(from, y)
		p.write(cells, from, to, after)
	case gap == 0:
		p.write(cells, from, to, after)
	default:
		p.shorter(func() { p.write(cells, x, to, after) }, func() {
			p.move(from, y)
			p.write(cells, from, to, after)
		})
	}
}

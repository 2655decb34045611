package onscreen

import "unicode/utf8"

// write writes cells, from one to, not including, another, the first of them at
// the cursor. What is the same up to the line's end is erased in one go. After is
// what is written next.
func (p *pen) write(cells []cell, from, to int, after cell) {
	end := max(from, p.tail)
	if end+erasing > to {
		end = to
	}
	for first, last := from, from; first < end; first = last {
		for last = first + 1; last < end && cells[last] == cells[first]; last++ {
		}
		next := after
		if last < to {
			next = cells[last]
		}
		p.run(cells[first], last-first, next)
	}
	if end < to {
		p.erase(cells[end])
	}
}

// ends finds out from which cell on a line can be erased.
func (p *pen) ends(cells []cell) {
	p.tail = len(cells)
	ground := cells[p.tail-1]
	for p.erasable(ground) && p.tail > 0 && cells[p.tail-1] == ground {
		p.tail--
	}
}

// erasing is how many cells are erased rather than written, at the least.
const erasing = 3

// erasable reports whether a cell can be made by erasing it: a blank without a
// colour, or with one where the terminal erases in the ground's colour.
func (p *pen) erasable(c cell) bool { return c == blank || p.able && p.filled(c) }

// erase makes the line such a cell from the cursor on. It keeps the ink, which
// the next line probably has too.
func (p *pen) erase(c cell) {
	p.take(p.blanks(c.look, p.look, p.able).looks[1])
	p.buf = append(p.buf, "\x1b[K"...)
}

// way is one way to write a cell.
type way struct {
	text string
	look lookID
}

// run writes a cell so many times, in the way that takes the fewest bytes, those
// for the look of the next one included.
func (p *pen) run(c cell, n int, next cell) {
	best, least := way{}, -1
	for i := range 4 {
		w, ok := p.way(c, p.look, i)
		if !ok {
			break
		}
		cost := len(p.step(p.look, w.look)) + p.cost(w, n) + p.turn(w.look, next)
		if least < 0 || cost <= least {
			best, least = w, cost
		}
	}
	p.take(best.look)
	p.times(best, n)
	p.x += n
}

// way returns one of the ways to write a cell when a look is in force, from the
// first on, and whether there is one.
func (p *pen) way(c cell, in lookID, i int) (way, bool) {
	if c.text != " " || p.all[c.look].attrs != 0 {
		return way(c), i == 0
	}
	w := p.blanks(c.look, in, p.able)
	if i == 3 {
		return way{full, w.looks[i]}, i < w.n
	}
	return way{" ", w.looks[i]}, i < w.n
}

// turn returns how many bytes it takes from one look to that of a cell.
func (p *pen) turn(from lookID, c cell) int {
	least := -1
	for i := range 4 {
		w, ok := p.way(c, from, i)
		if !ok {
			break
		}
		if n := len(p.step(from, w.look)); least < 0 || n < least {
			least = n
		}
	}
	return least
}

// passing is how many blanks it has to be so that it is shorter to have them erased
// and pass over them.
const passing = 11

// times writes a cell so many times: by having the terminal repeat it, blanks
// without a colour by erasing them (ECH) and passing over them, if that is shorter.
func (p *pen) times(w way, n int) {
	switch {
	case p.repeated(w.text, n):
		p.buf = append(p.buf, w.text...)
		p.sequence(n-1, 'b')
	case n >= passing && p.bare(w):
		p.sequence(n, 'X')
		p.sequence(n, 'C')
	default:
		for range n {
			p.buf = append(p.buf, w.text...)
		}
	}
}

// cost returns how many bytes times takes.
func (p *pen) cost(w way, n int) int {
	switch {
	case p.repeated(w.text, n):
		return repeating(w.text, n)
	case n >= passing && p.bare(w):
		return 2 * (len("\x1b[X") + digits(n))
	}
	return n * len(w.text)
}

// bare reports whether a way writes a blank without a colour.
func (p *pen) bare(w way) bool {
	l := p.all[w.look]
	return w.text == " " && l.bg == "" && l.attrs&seenOnBlank == 0
}

// repeated reports whether it is shorter to have the terminal repeat a character
// than to write it so many times, and the terminal does repeat it. Of one with marks
// it would repeat the last mark.
func (p *pen) repeated(text string, n int) bool {
	return repeating(text, n) < n*len(text) && p.repeats(text)
}

// repeating returns how many bytes it takes to have a character repeated until it
// stands there so many times.
func repeating(text string, n int) int { return len(text) + len("\x1b[b") + digits(n-1) }

// repeats reports whether the terminal repeats a character.
func (p *pen) repeats(text string) bool {
	if len(text) == 1 {
		return p.reps.ascii
	}
	return p.reps.others && utf8.RuneCountInString(text) == 1
}

// cheap reports whether a cell many times takes few bytes.
func (p *pen) cheap(c cell) bool { return c == blank || p.repeats(c.text) }

package onscreen

import "strconv"

// pen writes cells, and knows where the cursor stands and what the terminal
// writes in.
type pen struct {
	*looks
	buf   []byte
	spare []byte // what was written in one of two ways
	width int
	able  bool
	reps  repeats
	tail  int // from here on the line that is written can be erased
	place
}

// place is what a pen has come to.
type place struct {
	x, y int    // of the cursor; y < 0: not known
	look lookID // in force
}

// begin starts anew, with nothing written.
func (p *pen) begin() { p.buf, p.place = p.buf[:0], place{y: -1} }

// lost tells that nobody knows where the cursor stands.
func (p *pen) lost() { p.y = -1 }

// shorter writes in one of two ways, in the one that takes fewer bytes.
func (p *pen) shorter(one, other func()) {
	begun, from, kept := p.place, len(p.buf), len(p.spare)
	one()
	after := p.place
	p.spare = append(p.spare, p.buf[from:]...)
	p.buf, p.place = p.buf[:from], begun
	other()
	if len(p.buf)-from >= len(p.spare)-kept {
		p.buf, p.place = append(p.buf[:from], p.spare[kept:]...), after
	}
	p.spare = p.spare[:kept]
}

// move puts the cursor on a cell. From the last column on it is told where to
// go, for some terminals wait there and others go on in the next line.
func (p *pen) move(x, y int) {
	known := p.y >= 0 && p.x < p.width
	switch {
	case known && y == p.y && x == p.x:
	case known && y == p.y && x > p.x:
		p.sequence(x-p.x, 'C')
	case known && y == p.y+1: // never longer than what else leads there
		p.buf = append(p.buf, "\r\n"...)
		if x > 0 {
			p.sequence(x, 'C')
		}
	default:
		p.buf = append(p.buf, "\x1b["...)
		p.number(y + 1)
		if x > 0 {
			p.buf = append(p.buf, ';')
			p.number(x + 1)
		}
		p.buf = append(p.buf, 'H')
	}
	p.x, p.y = x, y
}

// sequence writes a control sequence of one number, which counts as 1 where
// there is none.
func (p *pen) sequence(n int, final byte) {
	p.buf = append(p.buf, "\x1b["...)
	if n != 1 {
		p.number(n)
	}
	p.buf = append(p.buf, final)
}

func (p *pen) number(n int) { p.buf = strconv.AppendInt(p.buf, int64(n), 10) }

// digits returns how many digits a number has.
func digits(n int) int {
	d := 1
	for ; n > 9; n /= 10 {
		d++
	}
	return d
}

// take makes a look the one in force.
func (p *pen) take(l lookID) {
	p.buf = append(p.buf, p.step(p.look, l)...)
	p.look = l
}

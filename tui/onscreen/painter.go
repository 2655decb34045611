package onscreen

import (
	"io"
	"strings"
)

// painter puts pictures on a terminal, and sends of each only the cells that
// differ from the one before. It takes the terminal's look to be reset between
// pictures, and leaves it so; where the cursor stands then does not matter to it.
type painter struct {
	out    io.Writer
	height int
	rows   []row // on the screen; nil: not known
	pen
	next  []cell // the row in hand
	bare  []cell // the row in hand, as far as it is erased
	after []int  // the cell that is written after each, in the row in hand
	asks  string // what is written before the first picture, over which it is drawn; empty: nothing more
}

// Where there is room for what a terminal is asked.
const (
	askWidth  = 4
	askHeight = 2
)

// newPainter returns what puts pictures on a terminal; of a kind.
func newPainter(out io.Writer, k kind) *painter {
	return &painter{out: out, pen: pen{looks: newLooks(k.console), able: k.able}}
}

// resized forgets the screen, which a terminal may have wrapped again.
func (p *painter) resized(width, height int) { p.width, p.height, p.rows = width, height, nil }

// forget takes the screen to hold anything.
func (p *painter) forget() { p.rows = nil }

// draw shows a picture: lines of text with SGR sequences. What of it is outside
// the window is not shown.
func (p *painter) draw(picture string) {
	if p.width <= 0 || p.height <= 0 {
		return
	}
	known := p.rows != nil
	if !known {
		p.rows = make([]row, p.height)
	}
	p.begin()
	if !known && p.width >= askWidth && p.height >= askHeight {
		p.buf, p.asks = append(p.buf, p.asks...), ""
	}
	for y := range p.height {
		line, rest, _ := strings.Cut(picture, "\n")
		picture = rest
		if !known || p.rows[y].source != line {
			p.line(y, line, known)
		}
	}
	p.take(0)
	if len(p.buf) > 0 {
		_, _ = p.out.Write(p.buf) // a terminal that is gone ends the program by itself
	}
}

// line shows one line of a picture in place of what stands there, if that is
// known.
func (p *painter) line(y int, line string, known bool) {
	old := p.rows[y]
	next := reader{p.looks, p.width, p.able}.row(line, p.next)
	p.ends(next.cells)
	switch {
	case next.whole, old.whole:
		p.stretch(y, next.cells, 0, p.width, blank)
		p.lost() // a terminal may take a character to be wider or narrower
	case known:
		p.shorter(func() { p.change(y, old.cells, next.cells) }, func() { p.anew(y, old.cells, next.cells) })
	default:
		p.stretch(y, next.cells, 0, p.width, blank)
	}
	p.rows[y], p.next = next, old.cells
}

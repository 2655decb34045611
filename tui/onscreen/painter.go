package onscreen

import (
	"bytes"
	"io"
	"strconv"
	"strings"
)

// painter puts pictures on a terminal, and sends of each only the cells that
// differ from the one before. It takes the terminal's look to be reset between
// pictures, and leaves it so; where the cursor stands does not matter to it.
type painter struct {
	out           io.Writer
	repeats       bool // the terminal repeats a character when it is told to
	width, height int
	rows          []row // on the screen; nil: not known
	buf           bytes.Buffer
	style         string // that the terminal writes in
	seen          bool   // it is seen on a blank too
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
	p.buf.Reset()
	known := p.rows != nil
	if !known {
		p.rows = make([]row, p.height)
	}
	lines := strings.Split(picture, "\n")
	for y := range p.height {
		line := ""
		if y < len(lines) {
			line = lines[y]
		}
		if known && p.rows[y].source == line {
			continue
		}
		next := rowOf(line, p.width)
		if known && !next.whole && !p.rows[y].whole {
			p.change(y, p.rows[y].cells, next.cells)
		} else {
			p.whole(y, next.cells)
		}
		p.rows[y] = next
	}
	if p.buf.Len() == 0 {
		return
	}
	if p.style != "" {
		p.buf.WriteString("\x1b[m")
		p.style, p.seen = "", false
	}
	_, _ = p.out.Write(p.buf.Bytes()) // a terminal that is gone ends the program by itself
}

// whole writes a line from its first cell to its last.
func (p *painter) whole(y int, cells []cell) {
	p.move(0, y)
	p.write(cells, 0)
}

// nearby is how many bytes of cells that stay the same are written again rather
// than passed over by a movement of the cursor, which takes as many.
const nearby = 4

// change writes the cells that differ.
func (p *painter) change(y int, old, next []cell) {
	at := -1 // where the cursor stands in the line
	for x := 0; x < len(next); {
		if !dirty(old, next, x) {
			x++
			continue
		}
		end := x + 1 // of the stretch to write
		for i, same := end, 0; i < len(next) && same <= nearby; i++ {
			if same += len(next[i].text); dirty(old, next, i) {
				end, same = i+1, 0
			}
		}
		switch {
		case at < 0:
			p.move(x, y)
		case x > at:
			p.sequence(x-at, 'C')
		}
		if p.blankFrom(next, x) {
			p.write(next[x:], x)
			return
		}
		p.write(next[x:end], x)
		at, x = end, end
	}
}

// dirty reports whether cell x has to be written: it changes, or the one before
// it does and was bold. Terminals make a letter bold by drawing it twice, a
// pixel apart, and what it leaves in the next cell stays there.
func dirty(old, next []cell, x int) bool {
	return old[x] != next[x] || x > 0 && old[x-1] != next[x-1] && strings.HasPrefix(old[x-1].style, "\x1b[1")
}

// blankFrom reports whether there is nothing from a cell to the line's end.
func (p *painter) blankFrom(cells []cell, x int) bool {
	for _, c := range cells[x:] {
		if c != blank {
			return false
		}
	}
	return true
}

// write writes cells from the cursor on, which stands at x. Blanks up to the
// line's end are erased in one go.
func (p *painter) write(cells []cell, x int) {
	end := len(cells)
	if x+end == p.width {
		for end > 0 && cells[end-1] == blank {
			end--
		}
	}
	for from, to := 0, 0; from < end; from = to {
		for to = from + 1; to < end && cells[to] == cells[from]; to++ {
		}
		p.run(cells[from], to-from)
	}
	if end < len(cells) {
		p.look(blank)
		p.buf.WriteString("\x1b[K")
	}
}

// run writes a cell so many times: blanks by erasing them (ECH of ECMA-48) and
// passing over them, others by having the terminal repeat them (REP) if it does,
// each if that is shorter.
func (p *painter) run(c cell, n int) {
	p.look(c)
	switch {
	case c == blank && n > 10:
		p.sequence(n, 'X')
		p.sequence(n, 'C')
	case p.repeats && n > 6 && len(c.text) == 1: // tmux repeats no character of more than a byte
		p.buf.WriteString(c.text)
		p.sequence(n-1, 'b')
	default:
		for range n {
			p.buf.WriteString(c.text)
		}
	}
}

// look makes the terminal write in the style of a cell. What a blank is written
// in does not matter as long as it is not seen.
func (p *painter) look(c cell) {
	style := c.style
	if style == p.style || c == blank && !p.seen {
		return
	}
	switch {
	case style == "":
		p.buf.WriteString("\x1b[m")
	case p.style != "": // no number is 0, which resets
		p.buf.WriteString("\x1b[;" + style[len("\x1b["):])
	default:
		p.buf.WriteString(style)
	}
	p.style, p.seen = style, seenOnBlank(style)
}

// move puts the cursor on a cell.
func (p *painter) move(x, y int) {
	p.buf.WriteString("\x1b[")
	p.number(y + 1)
	if x > 0 {
		p.buf.WriteByte(';')
		p.number(x + 1)
	}
	p.buf.WriteByte('H')
}

// sequence writes a control sequence of one number.
func (p *painter) sequence(n int, final byte) {
	p.buf.WriteString("\x1b[")
	p.number(n)
	p.buf.WriteByte(final)
}

func (p *painter) number(n int) {
	p.buf.Write(strconv.AppendInt(p.buf.AvailableBuffer(), int64(n), 10))
}

// repeats reports whether the terminal that the environment names repeats a
// character when it is told to. Where that is not sure it is not asked to.
func repeats(getenv func(string) string) bool {
	term, _, _ := strings.Cut(getenv("TERM"), "-")
	switch term {
	case "xterm":
		return getenv("TERM_PROGRAM") != "Apple_Terminal" // the capability rep of xterm's entry in terminfo
	case "tmux", "foot", "st", "konsole", "alacritty", "wezterm", "ghostty", "vte":
		return true
	case "screen":
		return getenv("TMUX") != "" // tmux by its older name
	}
	return false
}

package glyph

import (
	"strings"
	"testing"
)

func difference(a, b *canvas) int {
	n := 0
	for i := range a.on {
		if a.on[i] != b.on[i] {
			n++
		}
	}
	return n
}

// TestLegible asks that any two figures differ in a fair part of their box, 4.5 %
// of its pixels and never fewer than two, at every size.
func TestLegible(t *testing.T) {
	const figures = "0123456789"
	eachFont(func(f Font) {
		for i, a := range figures {
			for _, b := range figures[i+1:] {
				n := difference(bitmap(f, a), bitmap(f, b))
				if n < 2 || float64(n) < 0.045*float64(f.width*f.height) {
					t.Errorf("set %d, %d×%d: %c and %c differ in %d pixels", f.set, f.width, f.height, a, b, n)
				}
			}
		}
	})
}

// TestDistinct asks that no two characters look the same, wherever they stand
// in their boxes from left to right. The letter O and the figure 0 may, as they
// do in many hands; so may × and X.
func TestDistinct(t *testing.T) {
	eachFont(func(f Font) {
		seen := map[string]rune{}
		for _, r := range family() {
			if strings.ContainsRune(" O×", r) {
				continue
			}
			key := bitmap(f, r).trimmed()
			if other, ok := seen[key]; ok {
				t.Errorf("set %d, %d×%d: %c and %c look the same", f.set, f.width, f.height, r, other)
			}
			seen[key] = r
		}
	})
}

// trimmed tells what is drawn, without the blank columns beside it.
func (c *canvas) trimmed() string {
	from, to := c.w, 0
	for i, on := range c.on {
		if on {
			from, to = min(from, i%c.w), max(to, i%c.w+1)
		}
	}
	key := []byte{byte(to - from)}
	for i, on := range c.on {
		if x := i % c.w; x >= from && x < to {
			mark := byte('.')
			if on {
				mark = '#'
			}
			key = append(key, mark)
		}
	}
	return string(key)
}

// TestEven asks that no glyph is ragged: those that are alike on both sides,
// or when turned, are so to the pixel.
func TestEven(t *testing.T) {
	mirror := func(c *canvas) *canvas {
		m := newCanvas(c.w, c.h)
		for y := range c.h {
			for x := range c.w {
				m.set(c.w-1-x, y, c.at(x, y))
			}
		}
		return m
	}
	turn := func(c *canvas) *canvas {
		m := newCanvas(c.w, c.h)
		for i, on := range c.on {
			m.on[len(c.on)-1-i] = on
		}
		return m
	}
	eachFont(func(f Font) {
		for _, r := range "08AHIMOTUVWXY:.-+■•↔▲║♦↑" {
			if c := bitmap(f, r); difference(c, mirror(c)) != 0 {
				t.Errorf("set %d, %d×%d: %c is not the same on both sides", f.set, f.width, f.height, r)
			}
		}
		// A bar has no place in the very middle of an even number of rows
		// that is odd without it, nor has a slant's middle row.
		for r, odd := range map[rune]int{'0': 0, 'O': 0, 'I': 0, ':': 0, '■': 0, '•': 0, '↔': 0, '║': 0, '♦': 0,
			'N': 4, 'X': 4, 'Z': 4, '/': 4, '×': 4, 'H': (f.height - f.bar) % 2 * 1000, '-': (f.height - f.bar) % 2 * 1000} {
			if c := bitmap(f, r); difference(c, turn(c)) > odd {
				t.Errorf("set %d, %d×%d: %c is not the same upside down", f.set, f.width, f.height, r)
			}
		}
		if difference(bitmap(f, '6'), turn(bitmap(f, '9'))) != 0 {
			t.Errorf("set %d, %d×%d: 9 is not 6 turned", f.set, f.width, f.height)
		}
	})
}

// TestConnected asks that each figure and letter is one piece: no stroke has
// a break.
func TestConnected(t *testing.T) {
	eachFont(func(f Font) {
		for _, r := range family() {
			if ch, _, _, _ := box(f, r); strings.ContainsRune(" :!↔║;?¿¡\"«»=%÷±@&", r) || ch.over != 0 || ch.under != 0 {
				continue
			}
			if n := pieces(bitmap(f, r)); n != 1 {
				t.Errorf("set %d, %d×%d: %c is in %d pieces", f.set, f.width, f.height, r, n)
			}
		}
	})
}

// pieces counts the groups of lit pixels that touch, corners included.
func pieces(c *canvas) int {
	seen := make([]bool, len(c.on))
	var flood func(x, y int)
	flood = func(x, y int) {
		if x < 0 || y < 0 || x >= c.w || y >= c.h || seen[y*c.w+x] || !c.at(x, y) {
			return
		}
		seen[y*c.w+x] = true
		for dy := -1; dy <= 1; dy++ {
			for dx := -1; dx <= 1; dx++ {
				flood(x+dx, y+dy)
			}
		}
	}
	n := 0
	for i, on := range c.on {
		if on && !seen[i] {
			n++
			flood(i%c.w, i/c.w)
		}
	}
	return n
}

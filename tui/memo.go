package tui

import (
	"fmt"

	"coldfloor/internal/plan"
	"coldfloor/tui/glyph"
)

// memo keeps how large things were found to fit, for the next picture asks the
// same. It is shared by the copies of a style, which one goroutine draws with.
type memo struct {
	fonts   map[fontKey]fontFound
	layouts map[string]layout
}

type (
	fontKey struct {
		text  string
		cols  int
		rows  float64
		inset bool
	}
	fontFound struct {
		font glyph.Font
		ok   bool
	}
)

// memoSize bounds what is kept, in entries of each kind.
const memoSize = 4096

func newMemo() *memo {
	return &memo{fonts: map[fontKey]fontFound{}, layouts: map[string]layout{}}
}

// font returns what find finds for a key.
func (m *memo) font(k fontKey, find func() (glyph.Font, bool)) (glyph.Font, bool) {
	f, known := m.fonts[k]
	if !known {
		if len(m.fonts) >= memoSize {
			clear(m.fonts)
		}
		f.font, f.ok = find()
		m.fonts[k] = f
	}
	return f.font, f.ok
}

// choose is glyph.Choose for the terminal's characters.
func (s *style) choose(text string, cols int, rows float64) (glyph.Font, bool) {
	return s.memo.font(fontKey{text, cols, rows, false}, func() (glyph.Font, bool) { return glyph.Choose(text, cols, rows, s.set) })
}

// inset is glyph.Inset for the terminal's characters.
func (s *style) inset(text string, cols, rows int) (glyph.Font, bool) {
	return s.memo.font(fontKey{text, cols, float64(rows), true}, func() (glyph.Font, bool) { return glyph.Inset(text, cols, rows, s.set) })
}

// layoutKey tells apart the fields that are shared out differently.
func (f frame) layoutKey(rows int) string {
	c, side := f.scene.count, f.side()
	key := fmt.Sprint(rows, f.width, side == plan.Left, side == plan.Right, c.before, "\x00", c.widest)
	for _, b := range c.beside {
		key += "\x00" + b.widest
	}
	return key
}

// keep keeps how a field was shared out.
func (m *memo) keep(key string, l layout) {
	if len(m.layouts) >= memoSize {
		clear(m.layouts)
	}
	m.layouts[key] = l
}

// with returns the layout for the texts of a moment.
func (l layout) with(c counted) layout {
	if l.before.cells == 0 {
		c = c.folded()
	}
	side := make([]lines, len(l.side))
	for i, t := range l.side {
		t.text = c.beside[i].text
		side[i] = t
	}
	l.side = side
	return l
}

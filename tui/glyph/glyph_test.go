package glyph

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "rewrite the pictures under testdata")

var sets = []Set{Plain, Half, Quadrant, Sextant}

// TestPictures holds what was looked at and found good.
func TestPictures(t *testing.T) {
	names := map[Set]string{Plain: "plain", Half: "half", Quadrant: "quadrant", Sextant: "sextant"}
	for _, set := range sets {
		var got bytes.Buffer
		for _, rows := range []int{2, 3, 4, 5, 7, 10} {
			for _, text := range []string{"0123456789", "12:45", "+15 -3 2/4", "LEFT RIGHT", "SWITCH GO", "KNEE JUMP", "PLYO BOX", "FADQVZ", "■•↔►", "▲║♦√", "↑"} {
				if lines, ok := Render(text, 110, rows, set); ok {
					fmt.Fprintf(&got, "%s in %d rows\n%s\n", text, rows, strings.Join(lines, "\n"))
				} else {
					fmt.Fprintf(&got, "%s in %d rows: no room\n", text, rows)
				}
			}
		}
		name := filepath.Join("testdata", names[set]+".txt")
		if *update {
			if err := os.WriteFile(name, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
			continue
		}
		want, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got.Bytes(), want) {
			t.Errorf("%s: the pictures differ; look at them with -update and git diff", name)
		}
	}
}

// bitmap draws one glyph alone.
func bitmap(f Font, r rune) *canvas {
	w := f.advance(r)
	c := newCanvas(w, f.height)
	masters[r].draw(pen{c: c, w: w, h: f.height, Font: f})
	return c
}

// TestKeepsToItsBox draws each glyph on a canvas that is higher than its font,
// as it is where a font ends within a cell.
func TestKeepsToItsBox(t *testing.T) {
	eachFont(func(f Font) {
		for r, m := range masters {
			if m.draw == nil {
				continue
			}
			c := newCanvas(f.advance(r), f.height+3)
			m.draw(pen{c: c, w: c.w, h: f.height, Font: f})
			if slices.Contains(c.on[c.w*f.height:], true) {
				t.Errorf("set %d, %d×%d: %c reaches below its base", f.set, f.width, f.height, r)
			}
		}
	})
}

// eachFont calls do with fonts of every height up to 24 pixels and some
// beyond, as wide as they get and as narrow.
func eachFont(do func(Font)) {
	heights := []int{31, 40, 60, 61}
	for h := minHeight; h <= 24; h++ {
		heights = append(heights, h)
	}
	for _, set := range sets {
		for _, h := range heights {
			widest, ok := fitWidth("0", h, 1000, set)
			if !ok {
				continue
			}
			do(widest)
			for w := minWidth; w < widest.width; w++ {
				if f, ok := fitWidth("0", h, w, set); ok {
					do(f)
					break
				}
			}
		}
	}
}

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

// TestDistinct asks that no two glyphs look the same. The letter O and the
// figure 0 may, as they do in many hands; so may × and X, and the dashes.
func TestDistinct(t *testing.T) {
	eachFont(func(f Font) {
		seen := map[string]rune{}
		for r := range masters {
			if strings.ContainsRune(" O×–−", r) {
				continue
			}
			c := bitmap(f, r)
			key := fmt.Sprint(c.w, c.on)
			if other, ok := seen[key]; ok {
				t.Errorf("set %d, %d×%d: %c and %c look the same", f.set, f.width, f.height, r, other)
			}
			seen[key] = r
		}
	})
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
		for r := range masters {
			if strings.ContainsRune(" :!↔║", r) {
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

func TestRenderKeepsToItsRoom(t *testing.T) {
	chars := slices.Sorted(func(yield func(rune) bool) {
		for r := range masters {
			if !yield(r) {
				return
			}
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom(append(chars, 'é', '跳', 'x')), 0, 8, -1).Draw(t, "text")
		cols, rows := rapid.IntRange(-1, 120).Draw(t, "cols"), rapid.IntRange(-1, 30).Draw(t, "rows")
		set := rapid.SampledFrom(sets).Draw(t, "set")
		lines, ok := Render(text, cols, rows, set)
		w, h, fits := Size(text, cols, rows, set)
		if ok != fits || ok && !Has(text) || !ok && lines != nil {
			t.Fatalf("Render says %v, Size %v, Has %v", ok, fits, Has(text))
		}
		if len(lines) > max(rows, 0) || len(lines) != h || w > max(cols, 0) {
			t.Fatalf("%d lines, size %d×%d", len(lines), w, h)
		}
		for _, l := range lines {
			if utf8.RuneCountInString(l) != cols {
				t.Fatalf("line of %d cells, want %d", utf8.RuneCountInString(l), cols)
			}
		}
		if _, again, ok := Size(text, cols+1, rows+1, set); fits && (!ok || again < h) {
			t.Fatalf("%d rows high, with more room %d", h, again)
		}
	})
}

func TestFiguresAreEquallyWide(t *testing.T) {
	eachFont(func(f Font) {
		for _, r := range "0123456789" {
			if f.advance(r) != f.width {
				t.Errorf("%c is %d wide, want %d", r, f.advance(r), f.width)
			}
		}
	})
}

// TestFontOutlivesItsText draws another text in a font chosen for the widest.
func TestFontOutlivesItsText(t *testing.T) {
	f, ok := Choose("00:00", 60, 8, Quadrant)
	if !ok {
		t.Fatal("no room")
	}
	_, want := f.Size("00:00")
	for _, text := range []string{"59", "10:00", "é", ""} {
		lines := f.Render(text, 60)
		if len(lines) != want {
			t.Errorf("%q has %d lines, want %d", text, len(lines), want)
		}
	}
	if h := f.Height(); h > float64(want) || h <= float64(want)-1 {
		t.Errorf("height %v in %d rows", h, want)
	}
	cut := f.Render("00:00", 10)
	if utf8.RuneCountInString(cut[0]) != 10 {
		t.Errorf("cut to %d cells", utf8.RuneCountInString(cut[0]))
	}
}

func BenchmarkRender(b *testing.B) {
	for _, c := range []struct{ cols, rows int }{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", c.cols, c.rows), func(b *testing.B) {
			for b.Loop() {
				Render("12:45", c.cols, c.rows, Quadrant)
			}
		})
	}
}

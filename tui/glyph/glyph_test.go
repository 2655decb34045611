package glyph

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"pgregory.net/rapid"
)

var sets = []Set{Plain, Half, Quadrant, Sextant}

// box returns the size of a glyph's box, and its place on a canvas that leaves
// as much room over and under it as any mark takes.
func box(f Font, r rune) (ch char, width, pad, zone int) {
	chars, ok := parse(string(r))
	if !ok || len(chars) != 1 {
		panic(fmt.Sprintf("%c is not one character of the family", r))
	}
	over, under := f.markSize(chars)
	zone = max(over, under)
	return chars[0], f.advance(chars[0], zone), f.height/2 + 5, zone
}

// bitmap draws one glyph alone, with room for marks over and under it.
func bitmap(f Font, r rune) *canvas {
	ch, width, pad, zone := box(f, r)
	c := newCanvas(width, f.height+2*pad)
	f.draw(c, ch, 0, pad, zone)
	return c
}

// family holds every character that is drawn in a way of its own: the masters,
// and the letters of Latin-1, Latin Extended-A and of Romanian that are drawn
// with marks.
func family() []rune {
	all := slices.Collect(maps.Keys(masters))
	for r := rune(0xC0); r < 0x250; r++ {
		if chars, ok := parse(string(r)); ok && len(chars) == 1 && unicode.IsUpper(r) && (chars[0].over != 0 || chars[0].under != 0) {
			all = append(all, r)
		}
	}
	slices.Sort(all)
	return all
}

// alphabets hold the letters beyond A to Z of languages of Europe (from memory
// of the exemplar characters of Unicode's Common Locale Data Repository).
var alphabets = map[string]string{
	"Azerbaijani": "çəğıöşü", "Catalan": "àçéèíïŀóòúü", "Croatian": "čćđšž", "Czech": "áčďéěíňóřšťúůýž", "Danish": "æøå",
	"Esperanto": "ĉĝĥĵŝŭ", "Estonian": "äõöüšž", "Faroese": "áðíóúýæø", "Finnish": "åäöšž", "French": "àâæçéèêëîïôœùûüÿ",
	"German": "äöüß", "Hungarian": "áéíóöőúüű", "Icelandic": "áðéíóúýþæö", "Irish": "áéíóú", "Italian": "àèéìòù",
	"Latvian": "āčēģīķļņšūž", "Lithuanian": "ąčęėįšųūž", "Maltese": "ċġħż", "Norwegian": "æøåéòô", "Polish": "ąćęłńóśźż",
	"Portuguese": "áâãàçéêíóôõú", "Romanian": "ăâîșț", "Sami": "áčđŋšŧž", "Slovak": "áäčďéíĺľňóôŕšťúýž", "Spanish": "áéíñóúü¿¡",
	"Swedish": "åäöé", "Turkish": "çğıİöşü", "Welsh": "âêîôûŵŷ", "signs": "0123456789.,:;!?¿¡'’\"„“”()[]{}<>«»=~_|\\/·%°#&@*±÷+-–−×½¼¾…²",
}

func TestEuropeanLatinIsDrawn(t *testing.T) {
	for name, letters := range alphabets {
		for _, r := range letters {
			if !Has(string(r)) || !Has(string(unicode.ToUpper(r))) {
				t.Errorf("%s: %c cannot be drawn", name, r)
			}
		}
	}
	for _, text := range []string{"", "跳", "قفز", "Жим", "🏸", "\u0301", "ế"} {
		if Has(text) {
			t.Errorf("%q is said to be drawn", text)
		}
	}
	for text, as := range map[string]string{"Fußspitze": "FUSSSPITZE", "1½": "1 1/2", "½ turn": "1/2 turn", "e\u0301": "É"} {
		a, _ := parse(text)
		if b, _ := parse(as); !slices.Equal(a, b) {
			t.Errorf("%s is not drawn as %s", text, as)
		}
	}
}

// TestKeepsToItsBox draws each glyph with room on every side: a letter stays
// between its top and its base, and a row between it and its mark is blank.
func TestKeepsToItsBox(t *testing.T) {
	eachFont(func(f Font) {
		for _, r := range family() {
			ch, width, pad, zone := box(f, r)
			c := newCanvas(width+2*pad, f.height+2*pad)
			if masters[ch.base].draw == nil {
				continue
			}
			f.draw(c, ch, pad, pad, zone)
			inked := func(y int) bool { return slices.Contains(c.on[y*c.w:(y+1)*c.w], true) }
			for y := range c.h {
				over, under := ch.over != 0 && y >= pad-zone, ch.under != 0 && y < pad+f.height+zone
				within := y >= pad && y < pad+f.height || y < pad && over || y >= pad+f.height && under
				air := y >= pad-f.air() && y < pad || y >= pad+f.height && y < pad+f.height+f.air()
				if inked(y) && (!within || air) {
					t.Errorf("set %d, %d×%d: %c has ink in row %d", f.set, f.width, f.height, r, y-pad)
				}
				for x := range c.w {
					if c.at(x, y) && (x < pad || x >= pad+width) {
						t.Errorf("set %d, %d×%d: %c reaches out of its box in row %d", f.set, f.width, f.height, r, y-pad)
					}
				}
			}
			if (ch.over != 0) != inked(pad-f.air()-1) || (ch.under != 0) != inked(pad+f.height+f.air()) {
				t.Errorf("set %d, %d×%d: the mark of %c is not where it should be", f.set, f.width, f.height, r)
			}
		}
	})
}

// eachFont calls do with fonts of every height up to 24 pixels and some
// beyond, as wide as they get and as narrow.
func eachFont(do func(Font)) {
	nought := []char{{base: '0'}}
	heights := []int{31, 40, 60, 61}
	for h := minHeight; h <= 24; h++ {
		heights = append(heights, h)
	}
	for _, set := range sets {
		for _, h := range heights {
			widest, ok := fitWidth(nought, h, 1000, set)
			if !ok {
				continue
			}
			do(widest)
			for w := minWidth; w < widest.width; w++ {
				if f, ok := fitWidth(nought, h, w, set); ok {
					do(f)
					break
				}
			}
		}
	}
}

func TestRenderKeepsToItsRoom(t *testing.T) {
	chars := append(family(), 'é', 'ß', '½', '跳', 'x')
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.SampledFrom(chars), 0, 8, -1).Draw(t, "text")
		cols, rows := rapid.IntRange(-1, 120).Draw(t, "cols"), rapid.IntRange(-1, 30).Draw(t, "rows")
		set := rapid.SampledFrom(sets).Draw(t, "set")
		f, ok := Choose(text, cols, float64(rows), set)
		if !ok {
			return
		}
		lines := f.Render(text, cols)
		w, h := f.Size(text)
		if len(lines) > max(rows, 0) || len(lines) != h || w > max(cols, 0) || !Has(text) {
			t.Fatalf("%d lines, size %d×%d", len(lines), w, h)
		}
		for _, l := range lines {
			if utf8.RuneCountInString(l) != cols {
				t.Fatalf("line of %d cells, want %d", utf8.RuneCountInString(l), cols)
			}
		}
		if again, ok := Choose(text, cols+1, float64(rows)+0.5, set); !ok || again.Height() < f.Height() {
			t.Fatalf("%v rows high, with more room %v", f.Height(), again.Height())
		}
	})
}

// TestInsetKeepsOffTheEdges: a figure in a panel has blank pixels above and
// below it, whole rows where the panel is high.
func TestInsetKeepsOffTheEdges(t *testing.T) {
	for _, set := range sets {
		_, down := set.parts()
		for rows := 3; rows < 40; rows++ {
			f, ok := Inset("12", 200, rows, set)
			if !ok {
				continue
			}
			lines := f.In("12", 200, rows)
			if len(lines) != rows {
				t.Fatalf("%d lines, want %d", len(lines), rows)
			}
			above := (rows*down - f.height) / 2
			if below := rows*down - f.height - above; min(above, below) < 1 || rows >= spacious && min(above, below) < down {
				t.Errorf("set %d, %d rows: %d pixels above, %d below", set, rows, above, below)
			}
			if rows >= spacious && strings.TrimSpace(lines[0]+lines[rows-1]) != "" {
				t.Errorf("set %d, %d rows: ink in the first or the last row", set, rows)
			}
		}
	}
}

func TestFiguresAreEquallyWide(t *testing.T) {
	eachFont(func(f Font) {
		for _, r := range "0123456789" {
			if f.advance(char{base: r}, 0) != f.width {
				t.Errorf("%c is %d wide, want %d", r, f.advance(char{base: r}, 0), f.width)
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
	for _, text := range []string{"59", "10:00", "跳", ""} {
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
				f, _ := Choose("12:45", c.cols, float64(c.rows), Quadrant)
				f.Render("12:45", c.cols)
			}
		})
	}
}

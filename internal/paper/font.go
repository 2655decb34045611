package paper

import (
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/text/unicode/norm"

	"coldfloor/internal/safetext"
)

// The typeface is Liberation Sans (SIL Open Font License 1.1): Latin with the
// letters of Vietnamese, Greek, Cyrillic and Hebrew, in two weights of 0.4 MB.

// Proportions of the typeface, in parts of its size.
const (
	Ascent    = 0.905 // top of a line above the baseline
	Descent   = 0.212 // bottom of a line below it
	CapHeight = 0.729 // of capitals and, near enough, of figures
	leading   = 1.18  // from one baseline to the next
)

// Point is the unit of font sizes, in millimetres.
const Point = 25.4 / 72

// Face is one weight of the typeface at a size in points.
type Face struct {
	Bold  bool
	Size  float64
	Tight bool // for figures and units, where nothing hangs below the baseline
}

// Height returns the height of a line of text, in millimetres.
func (f Face) Height() float64 {
	if f.Tight {
		return 1.16 * CapHeight * f.Size * Point
	}
	return leading * f.Size * Point
}

// Baseline returns how far the baseline lies below the top of a line, in
// millimetres.
func (f Face) Baseline() float64 {
	if f.Tight {
		return 1.08 * CapHeight * f.Size * Point
	}
	return (leading + Ascent - Descent) / 2 * f.Size * Point
}

// Lacking stands for a character that the typeface does not have.
const Lacking = '◊'

// glyphs measures one weight of the typeface.
type glyphs struct {
	ttf    []byte
	font   *sfnt.Font
	buffer sfnt.Buffer
	widths map[rune]float64 // in parts of the size; below 0 for a character that is lacking
}

// newGlyphs reads a weight that the program carries.
func newGlyphs(ttf []byte) *glyphs {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(fmt.Sprintf("paper: the embedded font cannot be read: %v", err))
	}
	return &glyphs{ttf: ttf, font: f, widths: map[rune]float64{}}
}

// width returns the width of r, in parts of the size, and below 0 if the
// weight has no such character.
func (g *glyphs) width(r rune) float64 {
	w, ok := g.widths[r]
	if !ok {
		w = g.look(r)
		g.widths[r] = w
	}
	return w
}

func (g *glyphs) look(r rune) float64 {
	i, err := g.font.GlyphIndex(&g.buffer, r)
	if err != nil || i == 0 || r > 0xFFFF { // the library writes no character beyond
		return -1
	}
	em := fixed.Int26_6(g.font.UnitsPerEm()) << 6
	w, err := g.font.GlyphAdvance(&g.buffer, i, em, font.HintingNone)
	if err != nil {
		return -1
	}
	return float64(w) / float64(em)
}

// Typeface measures text and keeps which characters were lacking.
type Typeface struct {
	regular, bold *glyphs
	missing       map[rune]bool
}

var weights = sync.OnceValue(func() [2][]byte {
	return [2][]byte{liberationsansregular.TTF, liberationsansbold.TTF}
})

// NewTypeface returns the typeface, with no character noted as missing.
func NewTypeface() *Typeface {
	w := weights()
	return &Typeface{newGlyphs(w[0]), newGlyphs(w[1]), map[rune]bool{}}
}

// weight returns the weight that f is set in.
func (t *Typeface) weight(f Face) *glyphs {
	if f.Bold {
		return t.bold
	}
	return t.regular
}

// Width returns the width of s in millimetres.
func (t *Typeface) Width(f Face, s string) float64 {
	g, sum := t.weight(f), 0.0
	for _, r := range s {
		sum += max(g.width(r), 0)
	}
	return sum * f.Size * Point
}

// Has reports whether both weights have r.
func (t *Typeface) Has(r rune) bool { return t.regular.width(r) >= 0 && t.bold.width(r) >= 0 }

// Printable returns s with every character the typeface lacks replaced: by
// its plain equivalent if Unicode names one, else by a sign that is seen,
// and then it is noted as missing.
func (t *Typeface) Printable(s string) string {
	var b strings.Builder
	for _, r := range s {
		if t.Has(r) {
			b.WriteRune(r)
			continue
		}
		plain := norm.NFKC.String(string(r))
		if strings.ContainsFunc(plain, func(r rune) bool { return !t.Has(r) }) {
			t.missing[r] = true
			plain = string(Lacking)
		}
		b.WriteString(plain)
	}
	return b.String()
}

// Missing returns the characters that were lacking, in order.
func (t *Typeface) Missing() []rune {
	var rs []rune
	for r := range t.missing {
		rs = append(rs, r)
	}
	slices.Sort(rs)
	return rs
}

// NameOf names a character for a notice: itself, where it can be seen, and its
// number in Unicode.
func NameOf(r rune) string {
	if seen := safetext.Clean(string(r)); seen == string(r) && unicode.IsGraphic(r) && !unicode.IsMark(r) {
		return fmt.Sprintf("%c (U+%04X)", r, r)
	}
	return fmt.Sprintf("U+%04X", r)
}

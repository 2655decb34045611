package tui

import (
	"math"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/bubbles/help"
	"github.com/charmbracelet/lipgloss"
	"github.com/charmbracelet/x/ansi"
	"github.com/muesli/termenv"

	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/tui/glyph"
	"coldfloor/tui/palette"
)

// style is how everything looks on one terminal: its colours and the
// characters it can show.
type style struct {
	lang    *text.Language
	set     glyph.Set
	shown   safetext.Repertoire // what can be shown
	ascii   bool                // nothing but ASCII can be shown
	plain   bool                // the signs of the phases are of ASCII
	drab    bool                // there is no colour, nor anything else but characters
	few     bool                // there are 16 colours or fewer
	memo    *memo
	palette palette.Palette
	strong  lipgloss.Style // what to do
	note    lipgloss.Style // how to do it
	quiet   lipgloss.Style // what can wait
	help    *help.Model    // draws help from key bindings
}

// newStyle returns the style for a renderer's terminal.
func newStyle(r *lipgloss.Renderer, set glyph.Set, l *text.Language) *style {
	p := palette.New(r)
	s := &style{lang: l, set: set, ascii: set == glyph.Plain, drab: r.ColorProfile() == termenv.Ascii, few: r.ColorProfile() == termenv.ANSI, memo: newMemo(), palette: p,
		strong: p.Strong(), note: p.Plain(), quiet: p.Muted()}
	s.help = s.helpModel()
	s.show(repertoire(set))
	return s
}

// repertoire returns the characters that a terminal shows, if all that is known of
// it is the set that figures are drawn with.
func repertoire(set glyph.Set) safetext.Repertoire {
	switch set {
	case glyph.Plain:
		return safetext.Repertoire{}
	case glyph.Full, glyph.Half:
		return safetext.Console
	}
	return nil
}

// show sets what can be shown. The signs of the phases are all of ASCII where one
// of them is not shown, or two look alike.
func (s *style) show(r safetext.Repertoire) {
	s.shown = r
	s.plain = s.ascii || !r.Has(palette.Shapes())
}

// ink is for figures on the terminal's own ground.
func (s *style) ink(p palette.Phase) lipgloss.Style { return s.palette.Text(p) }

// fill is for text on a ground in the phase's colour.
func (s *style) fill(p palette.Phase) lipgloss.Style { return s.palette.Fill(p) }

// heavy is for words on a ground in the phase's colour. Where there are 16
// colours a terminal draws bold as a brighter colour, and black as grey: there
// is no bold on a ground.
func (s *style) heavy(p palette.Phase) lipgloss.Style { return s.fill(p).Bold(!s.few) }

// figures returns a line of figures in the phase's colour.
func (s *style) figures(p palette.Phase, line string) string {
	if s.ascii && !s.drab {
		return solid(line, s.fill(p), s.ink(p))
	}
	return s.ink(p).Render(line)
}

// filled returns a line of figures cut out of a filled ground. Where there is
// no colour the ground is filled by characters.
func (s *style) filled(p palette.Phase, line string) string {
	switch {
	case s.drab:
		return s.set.Invert(line)
	case s.ascii:
		return solid(line, s.note, s.fill(p))
	}
	return s.fill(p).Render(line)
}

// solid returns a line of figures of number signs, which stand for their
// ground in one look, between blanks and text in another.
func solid(line string, lit, unlit lipgloss.Style) string {
	var b strings.Builder
	for line != "" {
		n := len(line) - len(strings.TrimLeft(line, "#"))
		b.WriteString(lit.Render(strings.Repeat(" ", n)))
		line = line[n:]
		n = len(line) - len(strings.TrimLeftFunc(line, func(r rune) bool { return r != '#' }))
		b.WriteString(unlit.Render(line[:n]))
		line = line[n:]
	}
	return b.String()
}

// sign returns the phase's shape in one cell.
func (s *style) sign(p palette.Phase) string {
	if s.plain {
		return string(p.Look().ASCII)
	}
	return string(p.Look().Shape)
}

// helpModel returns help in the style's own looks.
func (s *style) helpModel() *help.Model {
	h := help.New()
	h.ShortSeparator, h.FullSeparator = "  ", "    "
	h.Ellipsis = safetext.Ellipsis
	h.Styles = help.Styles{Ellipsis: s.quiet, ShortKey: s.strong, ShortDesc: s.quiet, ShortSeparator: s.quiet,
		FullKey: s.strong, FullDesc: s.note, FullSeparator: s.note}
	return &h
}

// text returns text in characters that the terminal can show.
func (s *style) text(text string) string { return s.shown.Show(text) }

// minLetter is the least height of large letters, in cells, that is easier to
// read from afar than ordinary text.
const minLetter = 2.5

// spelled returns a text with a longer word for each number of seconds in it, for
// letters that are all capitals.
func (s *style) spelled(text string) string {
	parts := strings.Split(text, " s")
	for i, after := range parts[1:] {
		number := strings.HasSuffix(parts[i], "_") || endsIn(parts[i], unicode.IsDigit) // _ is where the next figure is typed
		next, _ := utf8.DecodeRuneInString(after)
		switch {
		case !number || unicode.IsLetter(next):
			parts[i+1] = " s" + after
		case next == '.' && strings.HasSuffix(s.lang.Step.Seconds, "."):
			parts[i+1] = " " + s.lang.Step.Seconds + after[1:]
		default:
			parts[i+1] = " " + s.lang.Step.Seconds + after
		}
	}
	return strings.Join(parts, "")
}

// allSpelled returns texts spelled.
func (s *style) allSpelled(texts []string) []string {
	all := make([]string, len(texts))
	for i, t := range texts {
		all[i] = s.spelled(t)
	}
	return all
}

// endsIn reports whether such holds for the last character of a text.
func endsIn(text string, such func(rune) bool) bool {
	last, _ := utf8.DecodeLastRuneInString(text)
	return such(last)
}

// letters returns text in the largest letters, at most most lines high, with
// which it fits into cols × rows cells, broken between words where that makes
// them larger, and how high they are; nil where there is no room for any.
func (s *style) letters(text string, cols, rows int, most float64) (drawn []string, height float64) {
	text = s.spelled(text)
	var font glyph.Font
	var lines []string
	for n := 1; n <= 3 && n*3 <= rows+1; n++ {
		broken := balance(strings.Fields(text), n)
		f, ok := s.upTo(broken, cols, float64((rows-(n-1))/n), most)
		if ok && f.Height() >= minLetter && f.Height() > font.Height()+0.5 {
			font, lines = f, broken
		}
	}
	for i, l := range lines {
		if i > 0 {
			drawn = append(drawn, "")
		}
		for _, row := range font.Render(l, cols) {
			drawn = append(drawn, " "+row)
		}
	}
	return drawn, font.Height()
}

// upTo returns the largest font in which every line fits, marks on its letters
// included, and whose letters alone are no higher than most rows.
func (s *style) upTo(lines []string, cols int, rows, most float64) (font glyph.Font, ok bool) {
	for ; rows >= minLetter; rows -= 0.5 {
		if font, ok = s.fontFor(lines, cols, rows); ok && font.Height() <= most {
			return font, true
		}
	}
	return font, false
}

// fontFor returns the largest font in which every line fits.
func (s *style) fontFor(lines []string, cols int, rows float64) (glyph.Font, bool) {
	if len(lines) == 0 {
		return glyph.Font{}, false
	}
	var font glyph.Font
	widest := -1
	for _, l := range lines {
		f, ok := s.choose(l, cols, rows)
		if !ok {
			return font, false
		}
		// The line that is widest in some font decides: it gets the smallest.
		w, _ := f.Size("MMMM")
		if widest < 0 || f.Height() < font.Height() || f.Height() == font.Height() && w < widest {
			font, widest = f, w
		}
	}
	for _, l := range lines {
		if w, h := font.Size(l); w > cols || h > int(math.Ceil(rows)) {
			return font, false
		}
	}
	return font, true
}

// balance breaks words into n lines of about the same length; fewer where
// there are not enough words.
func balance(words []string, n int) []string {
	n = min(n, len(words))
	if n <= 1 {
		return []string{strings.Join(words, " ")}
	}
	total := utf8.RuneCountInString(strings.Join(words, " "))
	var lines []string
	for n > 1 {
		want := total / n
		k, used := 1, utf8.RuneCountInString(words[0])
		for k < len(words)-(n-1) && used+1+utf8.RuneCountInString(words[k])/2 <= want {
			used += 1 + utf8.RuneCountInString(words[k])
			k++
		}
		lines = append(lines, strings.Join(words[:k], " "))
		words, total, n = words[k:], total-used-1, n-1
	}
	return append(lines, strings.Join(words, " "))
}

// cut returns a line that may hold escape sequences, cut to width cells with
// an ellipsis where it is longer.
func cut(line string, width int) string {
	return ansi.Truncate(line, max(0, width), safetext.Ellipsis)
}

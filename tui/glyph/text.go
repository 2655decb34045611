package glyph

import (
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// char is one character to draw: a glyph of the family and the marks on it.
type char struct {
	base        rune
	over, under rune // combining marks; 0: none
}

// expansions are characters that are drawn as others, beyond those that
// Unicode takes apart by itself. Capitals of ß are SS (Unicode Character
// Database, SpecialCasing.txt).
var expansions = strings.NewReplacer("ß", "SS", "ẞ", "SS", "½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅓", " 1/3", "⅔", " 2/3", "№", "NO.")

// alike holds the characters that are drawn as another of the family.
var alike = map[rune]rune{
	'⁄': '/', '’': '\'', '‘': '\'', 'ʼ': '\'', '‚': '\'', '′': '\'', '`': '\'', '“': '"', '”': '"', '„': '"', '″': '"',
	'−': '-', '–': '-', '—': '-', '‐': '-', '‑': '-', 'Ð': 'Đ', '✓': '√', '✔': '√', '\u00a0': ' ',
}

// parse takes text apart into characters. Small letters become capitals, and a
// letter with a mark a letter and a mark. A character that the family lacks
// has the base 0, and then ok is false, as it is for no text at all.
func parse(text string) (chars []char, ok bool) {
	ok = text != ""
	whole := expansions.Replace(text)
	if !strings.HasPrefix(text, " ") {
		whole = strings.TrimPrefix(whole, " ") // a fraction that begins the text is held off nothing
	}
	for _, r := range norm.NFKD.String(whole) {
		r = unicode.ToUpper(r)
		if unicode.Is(unicode.Mn, r) {
			ok = ok && mark(chars, r)
			continue
		}
		if as, found := alike[r]; found {
			r = as
		}
		if _, found := masters[r]; !found {
			r, ok = 0, false
		}
		chars = append(chars, char{base: r})
	}
	return chars, ok
}

// mark puts a mark on the last of the characters, and reports whether the
// family has the mark and there is room for it.
func mark(chars []char, r rune) bool {
	if len(chars) == 0 {
		return false
	}
	last := &chars[len(chars)-1]
	switch m, found := marks[r]; {
	case !found, m.under && last.under != 0, !m.under && last.over != 0:
		return false
	case m.under:
		last.under = r
	default:
		last.over = r
	}
	return true
}

// Has reports whether the family has every character of text: figures, signs,
// and the letters of the European Latin alphabets, small ones drawn as
// capitals.
func Has(text string) bool {
	_, ok := parse(text)
	return ok
}

package safetext

import (
	"strings"
	"unicode/utf8"
)

// Repertoire is the characters that a terminal shows beyond ASCII, each with the
// number of how it is drawn: those of one number look alike. Nil is all there
// are.
type Repertoire map[rune]uint16

// Console is what every console of a PC shows of its own: code page 437, in the
// order of the page, and with it the characters that Linux draws as one of these
// (drivers/tty/vt/cp437.uni).
var Console = func() Repertoire {
	page := Repertoire{}
	for i, r := range []rune("☺☻♥♦♣♠•◘○◙♂♀♪♫☼►◄↕‼¶§▬↨↑↓→←∟↔▲▼⌂" +
		"ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»" +
		"░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀" +
		"αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0") {
		page[r] = uint16(i)
	}
	page['\u03bc'], page['\u2126'] = page['\u00b5'], page['\u03a9'] // mu and micro, omega and ohm
	return page
}()

// Has reports whether every one of the characters is shown, and no two of them
// look alike.
func (r Repertoire) Has(chars string) bool {
	if r == nil {
		return true
	}
	drawn := map[uint16]bool{}
	for _, c := range chars {
		as, ok := r[c]
		if !ok || drawn[as] {
			return false
		}
		drawn[as] = true
	}
	return true
}

// Show returns s with each character that is not shown replaced as ASCII replaces
// it. Escape sequences stay as they are.
func (r Repertoire) Show(s string) string {
	if r == nil {
		return s
	}
	var b strings.Builder
	for c := range Characters(s) {
		first, n := utf8.DecodeRuneInString(c)
		if _, ok := r[first]; n == len(c) && (ok || first < 0x80) {
			b.WriteString(c)
			continue
		}
		b.WriteString(ASCII(c))
	}
	return b.String()
}

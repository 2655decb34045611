package safetext

import (
	"strings"
	"unicode/utf8"
)

// console holds the characters beyond ASCII that every console of a PC shows:
// those of its code page 437, in the order of the page, and with them the ones
// that Linux draws as one of these (drivers/tty/vt/cp437.uni).
const console = "☺☻♥♦♣♠•◘○◙♂♀♪♫☼►◄↕‼¶§▬↨↑↓→←∟↔▲▼⌂" +
	"ÇüéâäàåçêëèïîìÄÅÉæÆôöòûùÿÖÜ¢£¥₧ƒáíóúñÑªº¿⌐¬½¼¡«»" +
	"░▒▓│┤╡╢╖╕╣║╗╝╜╛┐└┴┬├─┼╞╟╚╔╩╦╠═╬╧╨╤╥╙╘╒╓╫╪┘┌█▄▌▐▀" +
	"αßΓπΣσµτΦΘΩδ∞φε∩≡±≥≤⌠⌡÷≈°∙·√ⁿ²■\u00a0" + "μΩ"

// Console returns s with each character that such a console lacks replaced as
// ASCII replaces it. Escape sequences stay as they are.
func Console(s string) string {
	var b strings.Builder
	for c := range Characters(s) {
		r, n := utf8.DecodeRuneInString(c)
		if n == len(c) && (r < 0x80 || strings.ContainsRune(console, r)) {
			b.WriteString(c)
			continue
		}
		b.WriteString(ASCII(c))
	}
	return b.String()
}

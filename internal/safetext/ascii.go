package safetext

import (
	"strings"
	"unicode"

	"github.com/charmbracelet/x/ansi"
	"golang.org/x/text/unicode/norm"
)

// plain holds the letters and signs that do not fall apart into ASCII and a
// mark, each with the one ASCII character that stands for it.
var plain = map[rune]rune{
	'ß': 's', 'æ': 'a', 'Æ': 'A', 'œ': 'o', 'Œ': 'O', 'ø': 'o', 'Ø': 'O', 'ł': 'l', 'Ł': 'L',
	'đ': 'd', 'Đ': 'D', 'ð': 'd', 'Ð': 'D', 'þ': 't', 'Þ': 'T', 'ı': 'i',
	'‘': '\'', '’': '\'', '“': '"', '”': '"', '„': '"', '«': '"', '»': '"',
	'‐': '-', '‑': '-', '–': '-', '—': '-', '−': '-', '×': 'x', '÷': '/',
	'≥': '>', '≤': '<', 'λ': 'l', '½': '?', '¼': '?', '¾': '?', // no other number in place of a part
	'…': '~', '·': '.', '•': '*', '→': '>', '←': '<', '↑': '^', '↓': 'v', '↔': '=',
	'─': '-', '━': '-', '│': '|', '┃': '|', '┌': '+', '┐': '+', '└': '+', '┘': '+',
	'├': '+', '┤': '+', '┬': '+', '┴': '+', '┼': '+', '╭': '+', '╮': '+', '╰': '+', '╯': '+',
}

// ASCII returns s with each character that is not ASCII replaced by ASCII of
// the same width: a letter without its accent, a sign that is near, else
// question marks. A whole frame can be passed through it, because it leaves
// ASCII as it is, escape sequences included: it does not clean.
func ASCII(s string) string {
	var b strings.Builder
	for c := range Characters(s) {
		if len(c) == 1 && c[0] < 0x80 || c == "\r\n" {
			b.WriteString(c)
			continue
		}
		b.WriteString(asciiCluster(c))
	}
	return b.String()
}

// nearest returns the ASCII character that stands for r, or r itself.
func nearest(r rune) rune {
	if p, ok := plain[r]; ok {
		return p
	}
	return r
}

// asciiCluster returns ASCII as wide as the cluster.
func asciiCluster(cluster string) string {
	width := ansi.StringWidth(cluster)
	var b strings.Builder
	for _, r := range norm.NFKD.String(strings.Map(nearest, cluster)) {
		if r = nearest(r); unicode.IsPrint(r) && r < 0x80 && b.Len() < width {
			b.WriteRune(r)
		}
	}
	if b.Len() == 0 {
		return strings.Repeat("?", width)
	}
	return b.String() + spaces(width-b.Len())
}

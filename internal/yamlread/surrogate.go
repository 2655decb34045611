package yamlread

import (
	"regexp"
	"strings"
	"unicode/utf16"

	"gopkg.in/yaml.v3"
)

// JSON is YAML, except for a character above U+FFFF that JSON writes as two
// escapes, the halves of a surrogate pair (RFC 8259, section 7), which the
// parser refuses. Such a pair is moved into the private-use area before the
// parser reads it, which keeps every column, and put together afterwards.
var (
	surrogates = regexp.MustCompile(`\\u[dD][89abAB][0-9a-fA-F]{2}\\u[dD][c-fC-F][0-9a-fA-F]{2}`)
	moved      = regexp.MustCompile(`\\u[eE][0-3][0-9a-fA-F]{2}\\u[eE][4-7][0-9a-fA-F]{2}`)
)

// apart is how far the halves are moved.
const apart = 0xe000 - 0xd800

// moveSurrogates moves the escaped pairs in src; it returns false if there is
// none.
func moveSurrogates(src []byte) ([]byte, bool) {
	found := false
	out := surrogates.ReplaceAllFunc(src, func(pair []byte) []byte {
		found = true
		p := append([]byte{}, pair...)
		for _, at := range []int{2, 8} {
			p[at] = 'e'
			p[at+1] = "01234567"[strings.IndexByte("89abcdef", lower(p[at+1]))]
		}
		return p
	})
	return out, found
}

// lower returns a hexadecimal digit in lower case.
func lower(digit byte) byte {
	if digit >= 'A' && digit <= 'F' {
		return digit + 'a' - 'A'
	}
	return digit
}

// joinSurrogates puts the moved pairs of a document together.
func joinSurrogates(n *yaml.Node) {
	for _, sub := range n.Content {
		joinSurrogates(sub)
	}
	if n.Kind != yaml.ScalarNode {
		return
	}
	if n.Style&yaml.DoubleQuotedStyle == 0 { // no escapes here: the letters stand for themselves
		n.Value = moved.ReplaceAllStringFunc(n.Value, func(s string) string {
			b := []byte(s)
			for _, at := range []int{2, 8} {
				b[at], b[at+1] = 'd', "89abcdef"[b[at+1]-'0']
			}
			return string(b)
		})
		return
	}
	var b strings.Builder
	text := []rune(n.Value)
	for i := 0; i < len(text); i++ {
		if i+1 < len(text) && isMoved(text[i], 0) && isMoved(text[i+1], 0x400) {
			b.WriteRune(utf16.DecodeRune(text[i]-apart, text[i+1]-apart))
			i++
			continue
		}
		b.WriteRune(text[i])
	}
	n.Value = b.String()
}

// isMoved reports whether r is a moved half whose row begins at offset from
// the first.
func isMoved(r, offset rune) bool { return r >= 0xe000+offset && r < 0xe400+offset }

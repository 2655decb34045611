package safetext

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Quote returns s in double quotes with every character that is not plainly
// seen written as an escape, so that a file's name can be told as it is and
// moves no cursor. A backslash stays single, as it stands in paths.
func Quote(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for len(s) > 0 {
		r, size := utf8.DecodeRuneInString(s)
		switch {
		case r == '\\':
			b.WriteByte('\\')
		case r == utf8.RuneError && size == 1, !unicode.IsPrint(r), r == '"':
			q := strconv.Quote(s[:size])
			b.WriteString(q[1 : len(q)-1])
		default:
			b.WriteRune(r)
		}
		s = s[size:]
	}
	b.WriteByte('"')
	return b.String()
}

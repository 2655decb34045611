package calendar

import (
	"io"
	"strings"
	"unicode/utf8"
)

// lines writes content lines (RFC 5545, section 3.1): ended by CRLF, and
// folded so that none is longer than maxOctets, its CRLF not counted.
type lines struct {
	w   io.Writer
	err error // the first error of w
}

const maxOctets = 75

// add writes one property; its value is escaped already.
func (l *lines) add(name, value string) {
	if l.err == nil {
		_, l.err = io.WriteString(l.w, fold(name+":"+value)+"\r\n")
	}
}

// fold breaks a line between runes. Each further line begins with a space,
// which counts.
func fold(line string) string {
	var b strings.Builder
	room := maxOctets
	for _, r := range line {
		n := utf8.RuneLen(r)
		if n > room {
			b.WriteString("\r\n ")
			room = maxOctets - 1
		}
		b.WriteRune(r)
		room -= n
	}
	return b.String()
}

// escaper escapes what has a meaning in a text (section 3.3.11).
var escaper = strings.NewReplacer(`\`, `\\`, ";", `\;`, ",", `\,`, "\n", `\n`)

// escape makes a value of a text. Characters that no content line may hold are
// left out.
func escape(text string) string {
	text = strings.Map(func(r rune) rune {
		if r < ' ' && r != '\n' && r != '\t' || r == 0x7f || r == utf8.RuneError {
			return -1
		}
		return r
	}, text)
	return escaper.Replace(text)
}

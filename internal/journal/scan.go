package journal

import (
	"bytes"
	"time"
)

// scanner reads JSON as this program writes it: without spaces, numbers without
// a sign or an exponent, no null unless a figure may be unknown. On anything
// else it gives up, and encoding/json has the say.
type scanner struct {
	text   []byte // what is left
	failed bool
	spare  []byte            // for strings with escapes
	words  map[string]string // read before, so that each is held once
	seen   [][]string        // lists of sides
	zone   *time.Location    // of the offset read last
	offset int               // in seconds

	entry Entry  // that is read
	arena *arena // what sets and rests are read into; nil: each has its own
}

// maxWords bounds what scanner.words holds on to, and maxWord how long each is.
const (
	maxWords = 4096
	maxWord  = 64 << 10
)

// fail gives up, and returns false.
func (s *scanner) fail() bool {
	s.failed, s.text = true, nil
	return false
}

// take passes over c, if it is next.
func (s *scanner) take(c byte) bool {
	if len(s.text) == 0 || s.text[0] != c {
		return false
	}
	s.text = s.text[1:]
	return true
}

// object calls value with each key of an object, to read its value.
func (s *scanner) object(value func(key []byte)) {
	if !s.take('{') {
		s.fail()
		return
	}
	if s.take('}') {
		return
	}
	for !s.failed {
		key := s.raw()
		if !s.take(':') {
			s.fail()
			return
		}
		value(key)
		if s.take(',') {
			continue
		}
		if !s.take('}') {
			s.fail()
		}
		return
	}
}

// list calls element for each element of an array, to read it.
func (s *scanner) list(element func()) {
	if !s.take('[') {
		s.fail()
		return
	}
	if s.take(']') {
		return
	}
	for !s.failed {
		element()
		if s.take(',') {
			continue
		}
		if !s.take(']') {
			s.fail()
		}
		return
	}
}

// raw reads a string without escapes, as it stands.
func (s *scanner) raw() []byte {
	if !s.take('"') {
		s.fail()
		return nil
	}
	for i, c := range s.text {
		switch {
		case c == '"':
			b := s.text[:i]
			s.text = s.text[i+1:]
			return b
		case c == '\\' || c < ' ':
			s.fail()
			return nil
		}
	}
	s.fail()
	return nil
}

// escaped is what may follow a backslash, and what it stands for.
var escaped = [256]byte{'"': '"', '\\': '\\', '/': '/', 'b': '\b', 'f': '\f', 'n': '\n', 'r': '\r', 't': '\t'}

// string reads a string. The caller has seen to it that the text is UTF-8.
func (s *scanner) string() string {
	if len(s.text) == 0 || s.text[0] != '"' {
		s.fail()
		return ""
	}
	rest, out := s.text[1:], s.spare[:0]
	for {
		i := bytes.IndexByte(rest, '"')
		if i < 0 {
			s.fail()
			return ""
		}
		back := bytes.IndexByte(rest[:i], '\\')
		if back < 0 {
			if out = append(out, rest[:i]...); !printable(out, len(out)-i) {
				s.fail()
				return ""
			}
			s.spare, s.text = out, rest[i+1:]
			return s.word(out)
		}
		from := len(out)
		out = append(out, rest[:back]...)
		c := escaped[rest[back+1]] // the quote at least is there
		if c == 0 || !printable(out, from) {
			s.fail()
			return ""
		}
		out, rest = append(out, c), rest[back+2:]
	}
}

// printable reports whether b holds no control character from that index on.
func printable(b []byte, from int) bool {
	for _, c := range b[from:] {
		if c < ' ' {
			return false
		}
	}
	return true
}

// word returns b as a string, the same one for a text read before.
func (s *scanner) word(b []byte) string {
	if w, ok := s.words[string(b)]; ok {
		return w
	}
	if len(b) > maxWord {
		return string(b)
	}
	if s.words == nil || len(s.words) >= maxWords {
		s.words = map[string]string{}
	}
	w := string(b)
	s.words[w] = w
	return w
}

// digits reads a whole number of so many digits at most, without a leading zero.
func (s *scanner) digits(most int) int {
	n, i := 0, 0
	for i < len(s.text) && '0' <= s.text[i] && s.text[i] <= '9' {
		n = n*10 + int(s.text[i]-'0')
		if i++; i > most {
			s.fail()
			return 0
		}
	}
	if i == 0 || i > 1 && s.text[0] == '0' {
		s.fail()
		return 0
	}
	s.text = s.text[i:]
	return n
}

// int reads a whole number from 0.
func (s *scanner) int() int {
	n := s.digits(15)
	s.whole()
	return n
}

// whole gives up if a fraction or an exponent follows.
func (s *scanner) whole() {
	if len(s.text) > 0 && (s.text[0] == '.' || s.text[0]|0x20 == 'e') {
		s.fail()
	}
}

// float reads a number from 0 with three decimals at most, exactly: both parts
// of the quotient are exact, so that it is rounded once.
func (s *scanner) float() float64 {
	n := s.digits(12)
	if !s.take('.') {
		s.whole()
		return float64(n)
	}
	scale, i := 1, 0
	for i < len(s.text) && '0' <= s.text[i] && s.text[i] <= '9' {
		if i == 3 {
			s.fail()
			return 0
		}
		n, scale, i = n*10+int(s.text[i]-'0'), scale*10, i+1
	}
	if i == 0 {
		s.fail()
		return 0
	}
	s.text = s.text[i:]
	s.whole()
	return float64(n) / float64(scale)
}

// literal passes over a word, if it is next.
func (s *scanner) literal(word string) bool {
	if len(s.text) < len(word) || string(s.text[:len(word)]) != word {
		return false
	}
	s.text = s.text[len(word):]
	return true
}

// bool reads true or false.
func (s *scanner) bool() bool {
	return s.literal("true") || !s.literal("false") && s.fail()
}

// count reads a number or null.
func (s *scanner) count() Count {
	if s.literal("null") {
		return Count{}
	}
	return Count{N: s.int(), Known: !s.failed}
}

package termshot

import (
	"io"
	"strconv"
	"unicode/utf8"
)

// Repeating returns a writer to an emulator that does not know how to repeat a
// character that is longer than a byte (REP, ECMA-48, 8.3.103): it writes the
// character as often as it is to be repeated.
func Repeating(w io.Writer) io.Writer { return &repeating{w: w} }

type repeating struct {
	w     io.Writer
	last  []byte // the character written last
	begun []byte // of a character or a sequence that has not ended
}

// Write implements io.Writer.
func (r *repeating) Write(b []byte) (int, error) {
	all := append(r.begun, b...)
	r.begun = nil
	var out []byte
	for len(all) > 0 {
		n := r.piece(all)
		if n == 0 { // not whole yet
			r.begun = append(r.begun, all...)
			break
		}
		if times, ok := repetition(all[:n]); ok {
			for range times {
				out = append(out, r.last...)
			}
		} else {
			out = append(out, all[:n]...)
		}
		all = all[n:]
	}
	_, err := r.w.Write(out)
	return len(b), err
}

// piece returns how long the character or the control sequence is that b begins
// with; 0 where it has not ended.
func (r *repeating) piece(b []byte) int {
	switch {
	case b[0] == '\x1b' && len(b) == 1:
		return 0
	case b[0] == '\x1b' && b[1] == '[':
		for i := 2; i < len(b); i++ {
			if b[i] >= 0x40 {
				return i + 1
			}
		}
		return 0
	case b[0] < 0x20 || b[0] == 0x7f:
		return 1
	case !utf8.FullRune(b):
		return 0
	}
	_, n := utf8.DecodeRune(b)
	r.last = append(r.last[:0], b[:n]...)
	return n
}

// repetition returns how often a sequence has the character before it repeated,
// and whether it is such a sequence.
func repetition(seq []byte) (int, bool) {
	if len(seq) < 4 || seq[1] != '[' || seq[len(seq)-1] != 'b' {
		return 0, false
	}
	n, err := strconv.Atoi(string(seq[2 : len(seq)-1]))
	return n, err == nil
}

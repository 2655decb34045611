package ground

import (
	"bytes"
	"testing"

	"coldfloor/internal/mutate"
)

var replies = [][]byte{[]byte("\x1b]11;rgb:ffff/ffff/ffff\x1b\\q"), []byte("p\x1b]11;rgb:1e/1e/1e\a"), []byte("\x1b[A\x1b]11;#fff\a \r"), []byte("+ \x1b]11;rgba:0/0/0/0\x1b"), []byte("\x1b[2;4Rp\x1b[2;2R"), []byte("\x1b[2~\x1b[2;5~\x1b[2;4R\x1b]11;#000\a")}

var tokens = []string{"\x1b", "\x1b]11;", "\x1b[2;", "4R", "\a", "\x1b\\", "rgb:", "/", "ffff", "q", "\x00", "\xff"}

// cut fails unless every key of what a terminal sends comes through in its
// order, however it is cut, with nothing put in.
func cut(t testing.TB, src []byte) {
	for _, size := range []int{1, 7, 256} {
		term := of(nil, true)
		var keys []byte
		for rest := src; len(rest) > 0; {
			n := min(size, len(rest))
			buf := append(bytes.Clone(term.held), rest[:n]...)
			term.held = nil
			rest = rest[n:]
			keys = append(keys, buf[:term.take(buf)]...)
		}
		keys = append(keys, term.held...)
		if !isPart(keys, src) || len(src)-len(keys) > len(ofColour)+longest+2+2*len(ofCursor+"0000R") {
			t.Fatalf("in pieces of %d: %q", size, keys)
		}
	}
}

// isPart reports whether part is whole with some bytes left out.
func isPart(part, whole []byte) bool {
	for _, b := range whole {
		if len(part) > 0 && part[0] == b {
			part = part[1:]
		}
	}
	return len(part) == 0
}

// FuzzAnswer looks for an answer that breaks the reader or takes keys with it.
func FuzzAnswer(f *testing.F) {
	for _, a := range replies {
		f.Add(a)
	}
	f.Fuzz(func(t *testing.T, src []byte) { cut(t, src) })
}

// TestMutated is FuzzAnswer with answers that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 5000, replies, tokens, cut) }

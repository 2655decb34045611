package safetext

import (
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/mutate"
)

var samples = [][]byte{[]byte("Rear-foot-raised split squat"), []byte("Kniebeuge, gehüpft"), []byte("\x1b]8;;x\x1b\\y\x1b[2J"), []byte("\u05d0\u05d1\u202e x"), []byte("跳 \U0001F469\u200D\U0001F467 \U0001F1E9\U0001F1EA"), []byte("\u0915\u094D\u200D\u0937 e\u0301\u0301\u0301\u0301\u0301\u0301"),
	[]byte("\u0901\u0321\u0301\u0301\u0301"), []byte("\u0937 e\u0301\u0301\u0301\u094D\u200D\u0937")} // these two were cleaned otherwise a second time

var tokens = []string{"\x1b", "\x1b[", "\x9b", "\u202E", "\u2066", "\u200D", "\u200C", "\uFE0F", "\u0301", "\U0001F1E6", "\U0001F3FD", "\uFF9E", "\u0E33", "\u1100", "\u1161", "\u094D", "\xff", "\xf0\x9f", "\n", "\t", "\x00", "\u0085", "\u2028", " ", "a", "\u25CC"}

// shown fails unless what is shown of a text moves no cursor, stays as it is
// when it is cleaned again, and takes no more room than there is.
func shown(t testing.TB, src []byte) {
	s := string(src)
	c := Clean(s)
	if !utf8.ValidString(c) || Clean(c) != c {
		t.Fatalf("Clean gives %+q, again %+q", c, Clean(c))
	}
	for _, r := range c {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
			t.Fatalf("Clean gives %+q with %U", c, r)
		}
	}
	for _, text := range []string{Quote(s), Isolate(c), ASCII(c)} {
		for _, r := range text {
			if unicode.IsControl(r) || r == utf8.RuneError && !utf8.ValidString(text) {
				t.Fatalf("%+q has %U", text, r)
			}
		}
	}
	n := len(src) % 24
	for _, line := range append(Wrap(s, n, 3), Fit(s, n)) {
		if w := ansi.StringWidth(line); w > n {
			t.Fatalf("%+q takes %d of %d", line, w, n)
		}
	}
}

// FuzzShown looks for a text that does harm to a terminal.
func FuzzShown(f *testing.F) {
	for _, s := range samples {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { shown(t, src) })
}

// TestMutated is FuzzShown with texts that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 5000, samples, tokens, shown) }

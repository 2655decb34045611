package ground

import (
	"io"
	"os"
	"strings"
	"testing"

	"github.com/charmbracelet/lipgloss"
)

// answers are as xterm ("XTerm Control Sequences", OSC 10 and 11) and others
// write them, with what they tell.
var answers = []struct {
	answer string
	dark   bool
}{
	{"\x1b]11;rgb:0000/0000/0000\x1b\\", true},
	{"\x1b]11;rgb:ffff/ffff/ffff\a", false},
	{"\x1b]11;rgb:1e1e/1e1e/2e2e\a", true},
	{"\x1b]11;rgb:fd/f6/e3\x1b\\", false},
	{"\x1b]11;rgba:0000/0000/0000/ffff\a", true},
}

// TestAnswerIsTakenOutOfTheKeys cuts an answer among keys in two at every
// byte, and reads the keys alone.
func TestAnswerIsTakenOutOfTheKeys(t *testing.T) {
	for _, c := range answers {
		all := "p\x1b[C" + c.answer + " q"
		for cut := range all {
			if begun := cut - len("p\x1b[C"); begun == 1 || begun == 2 {
				continue // Escape, or Alt with a key: not held up
			}
			x, w := open(t)
			keys := read(t, x, w, all[:cut]) + read(t, x, w, all[cut:])
			if want := "p\x1b[C q"; keys != want {
				t.Fatalf("%q cut at %d leaves %q, want %q", all, cut, keys, want)
			}
			look := lipgloss.NewRenderer(io.Discard)
			x.Ask(io.Discard, look)
			if look.HasDarkBackground() != c.dark {
				t.Errorf("%q is taken for dark: %v", c.answer, !c.dark)
			}
			if got := read(t, x, w, c.answer); got != c.answer {
				t.Errorf("after the answer %q is read as %q", c.answer, got)
			}
		}
	}
}

// TestKeysPassWhileTheAnswerIsAwaited: nothing else is held up or lost.
func TestKeysPassWhileTheAnswerIsAwaited(t *testing.T) {
	x, w := open(t)
	for _, keys := range []string{"a", "\x1b", "\x1b]", "\x1b[A", "\x1b[<0;1;1M", "\x1b[200~pasted\x1b[201~", "é"} {
		if got := read(t, x, w, keys); got != keys {
			t.Errorf("%q is read as %q", keys, got)
		}
	}
	endless := ofColour + strings.Repeat("0", 2*longest)
	if got := read(t, x, w, endless); got != endless {
		t.Errorf("what is no answer is read as %q", got)
	}
}

// TestRepeats: what a terminal repeats is known by where its cursor stands, however
// its two reports are cut, and no key is lost, not even one that begins as they do.
func TestRepeats(t *testing.T) {
	for _, c := range []struct {
		first, second string
		ascii, others bool
	}{{"4", "4", true, true}, {"4", "2", true, false}, {"2", "2", false, false}, {"4", "5", true, false}} {
		all := "p\x1b[2~\x1b[2;" + c.first + "R\x1b[2;5~q\x1b[2;" + c.second + "R\x1b[1;4R"
		for cut := range all {
			if strings.HasSuffix(all[:cut], "\x1b") || strings.HasSuffix(all[:cut], "\x1b[") {
				continue // not held up
			}
			x, w := open(t)
			keys := read(t, x, w, all[:cut]) + read(t, x, w, all[cut:])
			if want := "p\x1b[2~\x1b[2;5~q\x1b[1;4R"; keys != want {
				t.Fatalf("%q cut at %d leaves %q, want %q", all, cut, keys, want)
			}
			if ascii, others := x.Repeats(); ascii != c.ascii || others != c.others {
				t.Errorf("%q: repeats ASCII %v, others %v", all, ascii, others)
			}
			if got := read(t, x, w, "\x1b[2;4R"); got != "\x1b[2;4R" {
				t.Errorf("after the answers a third is read as %q", got)
			}
		}
	}
}

func TestBackgroundAssumed(t *testing.T) {
	for colours, dark := range map[string]bool{"": true, "15;0": true, "0;15": false, "0;default;7": false, "7;8;x": true, "0;99": true} {
		if assumed(colours) != dark {
			t.Errorf("with COLORFGBG=%s the background is taken for dark: %v", colours, !dark)
		}
	}
}

// open returns a terminal's input and what is typed into it.
func open(t *testing.T) (*Terminal, *os.File) {
	t.Helper()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Close(); w.Close() })
	return of(r, true), w
}

// read types text and returns what one Read makes of it.
func read(t *testing.T, x *Terminal, w *os.File, text string) string {
	t.Helper()
	if text == "" {
		return ""
	}
	if _, err := w.WriteString(text); err != nil {
		t.Fatal(err)
	}
	b := make([]byte, 256)
	n, err := x.Read(b)
	if err != nil {
		t.Fatal(err)
	}
	return string(b[:n])
}

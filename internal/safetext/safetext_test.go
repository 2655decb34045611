package safetext

import (
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"
)

func TestClean(t *testing.T) {
	for _, c := range []struct{ name, in, want string }{
		{"plain", "Split squat jump", "Split squat jump"},
		{"escape sequence", "\x1b[31mred\x1b[0m", "\uFFFD[31mred\uFFFD[0m"},
		{"title sequence that never ends", "\x1b]0;lunge", "\uFFFD]0;lunge"},
		{"one-byte CSI", "\u009b2Jx", "\uFFFD2Jx"},
		{"broken bytes", "a\xffb", "a\uFFFDb"},
		{"bell and delete", "a\ab\x7f", "a\uFFFDb\uFFFD"},
		{"lines and tabs", "a\nb\tc\u2028d", "a b c d"},
		{"right-to-left override", "a\u202Egnp\u202Cb", "agnpb"},
		{"isolates and marks", "\u2067א\u2069\u200F\u200E\u061C", "א"},
		{"zero width space and byte order mark", "a\u200Bb\uFEFF", "ab"},
		{"soft hyphen", "coun\u00ADter", "counter"},
		{"invisible letters", "a\u3164\u115F\uFFA0b", "ab"},
		{"composed", "e\u0301", "é"},
		{"Persian spelling keeps its non-joiner", "می\u200Cخواهم", "می\u200Cخواهم"},
		{"Indic spelling keeps its joiner", "क्\u200Dष", "क्\u200Dष"},
		{"no joiner in Latin", "a\u200Db\u200C", "ab"},
		{"family", "👩\u200D👩\u200D👧 x", "👩👩👧 x"},
		{"skin tone", "👍🏽", "👍"},
		{"flag", "🇸🇪 Stina", "SE Stina"},
		{"heart with a selector", "❤\uFE0F", "❤"},
		{"a mark alone", "\u0301a", "\u25CC\u0301a"},
		{"a heap of marks", "x" + strings.Repeat("\u0316", 40), "x" + strings.Repeat("\u0316", maxMarks)},
		{"private use", "\uE000", "\uFFFD"},
	} {
		if got := Clean(c.in); got != c.want {
			t.Errorf("%s: Clean(%+q) = %+q, want %+q", c.name, c.in, got, c.want)
		}
	}
}

func TestFit(t *testing.T) {
	for _, c := range []struct {
		in   string
		n    int
		want string
	}{
		{"Pogo hops", 9, "Pogo hops"},
		{"Pogo hops", 8, "Pogo ho…"},
		{"Pogo hops", 6, "Pogo…"},
		{"Pogo hops", 1, "…"},
		{"Pogo hops", 0, ""},
		{"Pogo hops", -3, ""},
		{"跳箱", 4, "跳箱"},
		{"跳箱", 3, "跳…"},
		{"跳箱", 2, "…"},
	} {
		if got := Fit(c.in, c.n); got != c.want {
			t.Errorf("Fit(%q, %d) = %q, want %q", c.in, c.n, got, c.want)
		}
	}
	if got := Centre("ab", 5); got != " ab  " {
		t.Errorf("Centre = %q", got)
	}
	if got := Pad("跳箱", 3); got != "跳…" {
		t.Errorf("Pad = %q", got)
	}
}

func TestWrap(t *testing.T) {
	for _, c := range []struct {
		in           string
		width, lines int
		want         []string
	}{
		{"", 5, 5, nil},
		{"Rear foot raised split squat", 12, 5, []string{"Rear foot", "raised split", "squat"}},
		{"Rear foot raised split squat", 12, 2, []string{"Rear foot", "raised spli…"}},
		{"Rear foot raised split squat", 30, 2, []string{"Rear foot raised split squat"}},
		{"Hampelmannsprung", 10, 3, []string{"Hampelmann", "sprung"}},
		{"a 跳箱 b", 1, 9, []string{"a", "…", "…", "b"}},
		{"x", 0, 3, nil},
		{"work, 20 s", 8, 5, []string{"work,", "20 s"}},
		{"rest 48 h.", 7, 5, []string{"rest", "48 h."}},
		{"20 s", 3, 5, []string{"20", "s"}},
		{"of 2 sets", 4, 5, []string{"of 2", "sets"}},
		{"make it so", 7, 5, []string{"make it", "so"}},
	} {
		if got := Wrap(c.in, c.width, c.lines); !slices.Equal(got, c.want) {
			t.Errorf("Wrap(%q, %d, %d) = %q, want %q", c.in, c.width, c.lines, got, c.want)
		}
	}
}

// Parts stay whole as long as a line has room for one.
func TestWrapParts(t *testing.T) {
	parts := []string{"0 rest", "1 very very easy", "10 max\timal"}
	for _, c := range []struct {
		width int
		want  string
	}{
		{40, "0 rest, 1 very very easy, 10 max imal"},
		{36, "0 rest, 1 very very easy,|10 max imal"},
		{24, "0 rest,|1 very very easy,|10 max imal"},
		{9, "0 rest,|1 very|very|easy,|10 max|imal"},
		{0, ""},
	} {
		if got := strings.Join(WrapParts(parts, c.width), "|"); got != c.want {
			t.Errorf("in %d cells %q, want %q", c.width, got, c.want)
		}
	}
	if got := WrapParts(nil, 10); got != nil {
		t.Errorf("of no parts %q", got)
	}
}

func TestASCII(t *testing.T) {
	for in, want := range map[string]string{
		"Lunge – séries":      "Lunge - series",
		"Fußgelenk…":          "Fusgelenk~",
		"跳":                   "??",
		"\x1b[1mé\x1b[0m\r\n": "\x1b[1me\x1b[0m\r\n",
		"½ m, ≥ 3":            "? m, > 3", // no other number than was written
	} {
		if got := ASCII(in); got != want {
			t.Errorf("ASCII(%q) = %q, want %q", in, got, want)
		}
	}
}

// text draws strings rich in what breaks a terminal line: raw bytes, every
// Unicode table, marks, joiners, bidirectional controls, escape sequences.
func text() *rapid.Generator[string] {
	nasty := rapid.SampledFrom([]string{"\x1b[2J", "\x1b]8;;", "\u202E", "\u2066", "\u200D", "\u200B", "\uFE0F",
		"\u0301", "\U0001F1E6", "\U0001F469", "\U0001F3FD", "\uFF9E", "\u0903", "\u102B", "\u0E33", "\u0D4E", "\u1100", "\u1161", "\u0915\u094D", "\u05D0", "跳", "\n", "\t", "\xff", "\u0085", " "})
	any := rapid.OneOf(rapid.String(), nasty, rapid.StringMatching(`[a-z]{1,12}`),
		rapid.Map(rapid.SliceOfN(rapid.Byte(), 0, 6), func(b []byte) string { return string(b) }))
	return rapid.Map(rapid.SliceOfN(any, 0, 12), func(parts []string) string { return strings.Join(parts, "") })
}

func TestCleanAlways(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := text().Draw(t, "s")
		got := Clean(s)
		if !utf8.ValidString(got) {
			t.Fatalf("Clean(%+q) = %+q is not UTF-8", s, got)
		}
		for _, r := range got {
			if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
				t.Fatalf("Clean(%+q) = %+q keeps %U", s, got, r)
			}
		}
		if again := Clean(got); again != got {
			t.Fatalf("Clean(%+q) = %+q, cleaned again %+q", s, got, again)
		}
		if Width(s) != ansi.StringWidth(got) {
			t.Fatalf("Width(%+q) = %d", s, Width(s))
		}
	})
}

func TestNeverTooWide(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, n := text().Draw(t, "s"), rapid.IntRange(-1, 40).Draw(t, "n")
		room := max(n, 0)
		if w := ansi.StringWidth(Fit(s, n)); w > room {
			t.Fatalf("Fit(%+q, %d) takes %d", s, n, w)
		}
		if w := ansi.StringWidth(Pad(s, n)); w != room {
			t.Fatalf("Pad(%+q, %d) takes %d", s, n, w)
		}
		if w := ansi.StringWidth(Centre(s, n)); w != room {
			t.Fatalf("Centre(%+q, %d) takes %d", s, n, w)
		}
		maxLines := rapid.IntRange(0, 5).Draw(t, "lines")
		lines := Wrap(s, n, maxLines)
		if len(lines) > maxLines {
			t.Fatalf("Wrap(%+q, %d, %d) has %d lines", s, n, maxLines, len(lines))
		}
		for _, line := range lines {
			if w := ansi.StringWidth(line); w > room || w == 0 {
				t.Fatalf("Wrap(%+q, %d, %d) has a line of %d: %+q", s, n, maxLines, w, line)
			}
		}
	})
}

func TestWrapKeepsEveryWord(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, n := text().Draw(t, "s"), rapid.IntRange(2, 40).Draw(t, "n")
		got := strings.Join(Wrap(s, n, 1000), "")
		want := strings.Join(strings.Fields(Clean(s)), "")
		if strings.ReplaceAll(got, " ", "") != want {
			t.Fatalf("Wrap(%+q, %d) = %+q, want the words of %+q", s, n, got, want)
		}
	})
}

func TestASCIIKeepsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(text().Draw(t, "s"))
		got := ASCII(s)
		if !printableASCII(got) || len(got) != ansi.StringWidth(s) {
			t.Fatalf("ASCII(%+q) = %+q, want %d cells", s, got, ansi.StringWidth(s))
		}
	})
}

func TestCharacters(t *testing.T) {
	for s, want := range map[string][]string{
		"": nil, "ab": {"a", "b"}, "e\u0301x": {"e\u0301", "x"}, "\r\n\x1b": {"\r\n", "\x1b"}, "👩\u200D👧!": {"👩\u200D👧", "!"},
	} {
		if got := slices.Collect(Characters(s)); !slices.Equal(got, want) {
			t.Errorf("Characters(%q) = %q, want %q", s, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := text().Draw(t, "s")
		if got := strings.Join(slices.Collect(Characters(s)), ""); got != s {
			t.Fatalf("the characters of %q are %q", s, got)
		}
	})
}

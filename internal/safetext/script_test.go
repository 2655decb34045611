package safetext

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// TestIsolate: what runs from right to left stands in an isolate of its own,
// and nothing else is touched.
func TestIsolate(t *testing.T) {
	for text, want := range map[string]string{
		"Pogo hops, 10 reps":         "Pogo hops, 10 reps",
		"قفز, 12 sec":                "\u2068قفز\u2069, 12 sec",
		"\x1b[1mقفز عالي\x1b[0m, 12": "\x1b[1m\u2068قفز عالي\u2069\x1b[0m, 12",
		"next: קפיצה - גבוהה (x)":    "next: \u2068קפיצה - גבוהה\u2069 (x)",
		"قفز 2 عالي":                 "\u2068قفز\u2069 2 \u2068عالي\u2069",
	} {
		if got := Isolate(text); got != want {
			t.Errorf("%q is isolated as %q, want %q", text, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		s := Clean(text().Draw(t, "text"))
		got := Isolate(s)
		if Clean(got) != s || Width(got) != Width(s) || strings.Count(got, "\u2068") != strings.Count(got, "\u2069") {
			t.Fatalf("%q is isolated as %q", s, got)
		}
	})
}

func TestSpaced(t *testing.T) {
	for text, want := range map[string]string{"跳 跃": "跳   跃", "Жим": "Ж и м", "قفز": "قفز", "é!": "é !"} {
		if got := Spaced(text); got != want {
			t.Errorf("%q is spaced as %q, want %q", text, got, want)
		}
	}
}

package safetext

import "testing"

func TestConsole(t *testing.T) {
	for s, want := range map[string]string{
		"5–10 min, 3 × 8 …":           "5-10 min, 3 x 8 ~",
		"Fuß über Öl, ½ m, 90°":       "Fuß über Öl, ½ m, 90°",
		"\x1b[1m▀▄█░ ▲■►•↔↑║√♦\x1b[m": "\x1b[1m▀▄█░ ▲■►•↔↑║√♦\x1b[m",
		"Łódź, e\u0301":               "Lódz, e",
		"跳":                           "??",
	} {
		if got := Console(s); got != want {
			t.Errorf("%q gives %q, want %q", s, got, want)
		}
	}
}

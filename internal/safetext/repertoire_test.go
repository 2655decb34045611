package safetext

import "testing"

func TestConsoleShows(t *testing.T) {
	for s, want := range map[string]string{
		"5–10 min, 3 × 8 …":           "5-10 min, 3 x 8 ~",
		"Fuß über Öl, ½ m, 90°":       "Fuß über Öl, ½ m, 90°",
		"\x1b[1m▀▄█░ ▲■►•↔↑║√♦\x1b[m": "\x1b[1m▀▄█░ ▲■►•↔↑║√♦\x1b[m",
		"Łódź, e\u0301":               "Lódz, e",
		"跳":                           "??",
	} {
		if got := Console.Show(s); got != want {
			t.Errorf("%q gives %q, want %q", s, got, want)
		}
	}
}

func TestRepertoireHas(t *testing.T) {
	if !Repertoire(nil).Has("跳") || (Repertoire{}).Has("é") || !Console.Has("▀▄█░▲↑") || Console.Has("μµ") || Console.Has("●") {
		t.Error("a repertoire has what it lacks, or lacks what it has")
	}
	if got := Repertoire(nil).Show("3 × 8 …"); got != "3 × 8 …" {
		t.Errorf("a terminal that shows everything shows %q", got)
	}
}

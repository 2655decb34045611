package onscreen

import "testing"

// The capability bce of the terminals' own entries in terminfo; a terminal that
// is not known is asked for nothing.
func TestAble(t *testing.T) {
	for _, c := range []struct {
		environ map[string]string
		want    bool
	}{
		{map[string]string{"TERM": "xterm-256color"}, true},
		{map[string]string{"TERM": "xterm-256color", "TERM_PROGRAM": "Apple_Terminal"}, false},
		{map[string]string{"TERM": "tmux-256color"}, true},
		{map[string]string{"TERM": "screen", "TMUX": "/tmp/tmux"}, true},
		{map[string]string{"TERM": "screen"}, false},
		{map[string]string{"TERM": "linux"}, false},
		{nil, false},
	} {
		if got := able(func(k string) string { return c.environ[k] }); got != c.want {
			t.Errorf("%v: %v, want %v", c.environ, got, c.want)
		}
	}
}

func TestKindOf(t *testing.T) {
	for term, want := range map[string]kind{"linux": {console: true}, "xterm": {able: true}, "": {}} {
		if got := kindOf(func(k string) string { return map[string]string{"TERM": term}[k] }); got != want {
			t.Errorf("TERM=%s: %+v, want %+v", term, got, want)
		}
	}
}

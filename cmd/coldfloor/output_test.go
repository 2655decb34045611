package main

import (
	"strings"
	"testing"

	"coldfloor/internal/safetext"
)

// TestOutputOnTheConsole: what the font lacks is replaced, wherever a write ends.
func TestOutputOnTheConsole(t *testing.T) {
	const text = "5–10 min, Fuß — ✓\n"
	for step := 1; step <= len(text); step++ {
		var b strings.Builder
		o := &output{Writer: &b, font: safetext.Repertoire{'ß': 1}}
		for rest := text; rest != ""; {
			n := min(step, len(rest))
			if got, err := o.Write([]byte(rest[:n])); got != n || err != nil {
				t.Fatal(got, err)
			}
			rest = rest[n:]
		}
		if got := b.String(); got != "5-10 min, Fuß - ?\n" {
			t.Errorf("in steps of %d: %q", step, got)
		}
	}
}

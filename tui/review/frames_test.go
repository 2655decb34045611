package review

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"pgregory.net/rapid"

	"coldfloor/internal/report/reporttest"
	"coldfloor/tui/glyph"
)

func TestFrames(t *testing.T) {
	for _, size := range []struct{ w, h int }{{40, 12}, {80, 24}, {120, 40}, {200, 60}} {
		var b strings.Builder
		for _, s := range states {
			names := []string{"Player 1"}
			if s.squad {
				names = reporttest.Names
			}
			frame := press(model(glyph.Quadrant, names...), size.w, size.h, s.keys...).View()
			fmt.Fprintf(&b, "== %s\n%s\n", s.name, trimmed(frame))
			fits(t, frame, size.w, size.h)
		}
		golden(t, fmt.Sprintf("%dx%d.txt", size.w, size.h), b.String())
	}
}

// Where there is nothing but ASCII, or no characters finer than half a cell,
// the charts are drawn with what there is.
func TestPlainFrames(t *testing.T) {
	var b strings.Builder
	for _, set := range []glyph.Set{glyph.Plain, glyph.Half} {
		for _, s := range states[2:6] {
			frame := press(model(set, "Player 1"), 80, 24, s.keys...).View()
			fmt.Fprintf(&b, "== %s\n%s\n", s.name, trimmed(frame))
			fits(t, frame, 80, 24)
			if set == glyph.Plain && strings.ContainsFunc(frame, func(r rune) bool { return r > '~' }) {
				t.Errorf("%s is not ASCII:\n%s", s.name, frame)
			}
		}
	}
	golden(t, "plain.txt", b.String())
}

func trimmed(frame string) string {
	lines := strings.Split(frame, "\n")
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return strings.Join(lines, "\n")
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("%s differs; run with -update and look at it. Got:\n%s", name, got)
	}
}

// fits holds a frame to its window.
func fits(t interface{ Errorf(string, ...any) }, frame string, width, height int) {
	lines := strings.Split(frame, "\n")
	if len(lines) > height {
		t.Errorf("%d lines in a window of %d:\n%s", len(lines), height, frame)
	}
	for _, l := range lines {
		if w := ansi.StringWidth(l); w > width {
			t.Errorf("%d cells in a window of %d: %q", w, width, l)
		}
	}
}

// Whatever players are called, however large the window is and whatever is
// typed, a frame fits, starts no escape sequence of theirs and does not fail.
func TestAnythingFits(t *testing.T) {
	keys := append([]string{"s", "r", "?", " ", "x", "G", "g"}, "up", "down", "left", "right", "enter", "esc", "tab", "pgdown", "pgup", "home", "end")
	rapid.Check(t, func(t *rapid.T) {
		names := rapid.SliceOfNDistinct(rapid.String(), 1, 3, rapid.ID).Draw(t, "names")
		set := rapid.SampledFrom([]glyph.Set{glyph.Plain, glyph.Half, glyph.Quadrant}).Draw(t, "set")
		m := model(set, names...)
		for range rapid.IntRange(1, 12).Draw(t, "times") {
			w, h := rapid.IntRange(1, 210).Draw(t, "width"), rapid.IntRange(1, 70).Draw(t, "height")
			m = press(m, w, h, rapid.SampledFrom(keys).Draw(t, "key"))
			frame := m.View()
			fits(t, frame, w, h)
			if i := strings.IndexByte(ansi.Strip(frame), 0x1b); i >= 0 {
				t.Fatalf("an escape sequence is not the program's: %q", frame)
			}
		}
	})
}

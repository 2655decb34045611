package tui

import (
	"fmt"
	"testing"
	"time"

	"github.com/muesli/termenv"

	"coldfloor/tui/glyph"
)

// BenchmarkFrame draws the running screen again each time, as once a second on
// a terminal.
func BenchmarkFrame(b *testing.B) {
	s := testStyle(termenv.TrueColor, glyph.Quadrant)
	m := momentOf(b, 35*time.Second, "", s)
	for _, size := range []struct{ width, height int }{{80, 24}, {200, 60}} {
		b.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(b *testing.B) {
			m := m.resized(size.width, size.height)
			b.ReportAllocs()
			for b.Loop() {
				m.View()
			}
		})
	}
}

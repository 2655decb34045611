package review

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/charmbracelet/x/ansi"

	"coldfloor/internal/journalgen"
	"coldfloor/internal/review"
	"coldfloor/internal/runs"
	"coldfloor/tui/glyph"
)

// Twelve players, in some of whose journals something is hidden: the first
// screen shows who hurts, who vanished, who cuts rests, who never rests and who says nothing of effort, in
// the smallest usual window and in a large one.
func TestSquadAtAGlance(t *testing.T) {
	dir, now := t.TempDir(), time.Date(2026, 11, 25, 17, 30, 0, 0, time.UTC)
	if err := journalgen.WriteSquad(dir, 20, now); err != nil {
		t.Fatal(err)
	}
	squad, _, err := review.Of([]string{dir}, review.Options{Now: now, Weeks: 60}, runs.Options{})
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	for _, size := range [][2]int{{80, 24}, {200, 60}} {
		m := press(New(Options{Squad: squad, By: review.ByTrouble, Glyphs: glyph.Quadrant, Look: look()}), size[0], size[1])
		frame := trimmed(ansi.Strip(m.View()))
		fits(t, m.View(), size[0], size[1])
		fmt.Fprintf(&b, "== %d×%d\n%s\n", size[0], size[1], frame)
		for _, want := range []string{"Cleo: pain right achilles, 7 of 10", "Finn: pain left knee, 3 of 10", "Dag: last session 21 days ago",
			"Bo: rests cut short 49 of 60", "Ida: rests cut short", "Gro: 10 days without a day of rest", "Hal: none of 5 sessions rated"} {
			if !strings.Contains(frame, want) {
				t.Errorf("%d×%d does not say %q", size[0], size[1], want)
			}
		}
		at := -1
		for _, name := range []string{" Cleo ", " Finn ", " Dag ", " Bo ", " Ida ", " Ana "} {
			i := strings.Index(frame, name)
			if i < at {
				t.Errorf("%d×%d:%sdoes not come after those in more trouble", size[0], size[1], name)
			}
			at = i
		}
	}
	golden(t, "twelve.txt", b.String())
}

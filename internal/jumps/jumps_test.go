package jumps

import (
	"testing"

	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// Names as coaches write them. What is a jump is common practice, no source.
func TestNamed(t *testing.T) {
	for _, name := range []string{
		"Hop", "Hops", "Pogo hops", "Hopping on the spot", "Jump", "Squat jump", "Jumping lunge", "Depth jump", "depth-jump", "Drop jumps", "Dropjump",
		"Tuck jumps", "Skater bound", "Bounding", "Split leap", "Leaps", "Pogos", "A-skip", "Power skips", "Single leg hop", "1-leg hop", "One-legged hop",
		"Rebound jump", "Hop left of the line", "Jumping jacks", "Skaters", "Power skipping", "Bunny hop", "Hip-width squat jump", "Squat, no pause, jump",
		"Strecksprung", "Hocksprünge", "Tiefsprung", "Standweitsprung", "Sprunglauf", "Hüpfer auf einem Bein", "Einbeinhüpfen", "Hopserlauf", "Wechselspruenge", "Hochspringen",
	} {
		if !Named(name) {
			t.Errorf("%q is not taken for a jump", name)
		}
	}
	for _, name := range []string{
		"Squat", "Wood chop", "Workshop", "Hip hop steps", "Burpee without a jump", "Burpee, no jump", "Hip hinge before a tuck jump", "Stretch after jumping",
		"Rope skipping", "Jump rope", "Skipping", "Easy skipping", "Seilspringen", "Seilhüpfen", "Rebound throw", "Split step", "Lunge",
		"Sprunggelenk kreisen", "Aufsteigen auf einen Vorsprung", "Kniebeuge ohne Sprung", "Spring ankles", "Landing position", "Sprint",
	} {
		if Named(name) {
			t.Errorf("%q is taken for a jump", name)
		}
	}
}

// NSCA Essentials' order of intensity, from memory: jumps in place, standing
// jumps, multiple hops, bounds, box drills, depth jumps. At which level one
// begins: common practice, no source.
func TestFrom(t *testing.T) {
	for name, want := range map[string]sessions.Level{
		"Depth jump": sessions.Advanced, "depth-jumps": sessions.Advanced, "Drop jump": sessions.Advanced, "Dropjumps": sessions.Advanced, "Tiefsprünge": sessions.Advanced,
		"Single-leg bounds": sessions.Advanced, "Bounds on one leg": sessions.Advanced, "1-leg bound": sessions.Advanced,
		"Tuck jumps": sessions.Intermediate, "tuck-jump": sessions.Intermediate, "Hurdle hops": sessions.Intermediate, "Skater bound": sessions.Intermediate,
		"Single leg hop": sessions.Intermediate, "1-leg hop": sessions.Intermediate, "Hop on one leg": sessions.Intermediate, "One-legged jump": sessions.Intermediate,
		"Hocksprung": sessions.Intermediate, "Einbeinhüpfen": sessions.Intermediate, "Sprunglauf": sessions.Intermediate,
		"Rebound jump": "", "Squat jump": "", "Pogo hops": "", "Hip hinge before a tuck jump": "", "Hop left of the line": "", "Single-leg squat": "",
	} {
		if got := From(name); got != want {
			t.Errorf("From(%q) = %q, want %q", name, got, want)
		}
	}
}

func TestIsAndCounted(t *testing.T) {
	written := yamlread.Marks{"contacts": {Line: 1, Column: 1}}
	for _, c := range []struct {
		what        string
		e           sessions.Exercise
		is, counted bool
	}{
		{"a name alone", sessions.Exercise{Name: "Hop", Reps: 5}, true, false},
		{"written out", sessions.Exercise{Name: "Hop", Reps: 5, Contacts: 1, Marks: written}, true, true},
		{"0 is an answer", sessions.Exercise{Name: "Hop", Reps: 5, Marks: written}, false, true},
		{"overhead", sessions.Exercise{Name: "Smash", Reps: 5, Overhead: sessions.Overhead{Kind: sessions.OverheadJump}}, true, false},
		{"overhead, 0 contacts counted", sessions.Exercise{Name: "Smash", Reps: 5, Overhead: sessions.Overhead{Kind: sessions.OverheadJump}, Marks: written}, true, true},
		{"timed", sessions.Exercise{Name: "Fast feet", Time: 5, Contacts: 1, Marks: written}, true, false},
		{"no jump", sessions.Exercise{Name: "Plank", Time: 5}, false, true},
	} {
		if is, counted := Is(&c.e), Counted(&c.e); is != c.is || counted != c.counted {
			t.Errorf("%s: jump %v, counted %v", c.what, is, counted)
		}
	}
}

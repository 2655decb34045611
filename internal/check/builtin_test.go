package check

import (
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/jumps"
	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// builtins calls f with every session that comes with the program.
func builtins(t *testing.T, f func(t *testing.T, s *sessions.Session)) {
	for _, b := range sessions.Builtins() {
		t.Run(b.Name, func(t *testing.T) {
			s, err := b.Session()
			if err != nil {
				t.Fatal(err)
			}
			f(t, s)
		})
	}
}

// The sessions that come with the program pass their own check, and no level
// of player is above its session's range. Those whose foot contacts lie below
// it say why; a day of tests has none to fill.
func TestBuiltinsPass(t *testing.T) {
	builtins(t, func(t *testing.T, s *sessions.Session) {
		for _, f := range Run(plan.Of(s), options()) {
			switch {
			case f.Severity != Note:
				t.Errorf("line %d: %s: %s [%s]", f.Pos.Line, f.Severity, f.Message, f.Rule)
			case f.Rule == "contacts" && !strings.Contains(f.Message, "within") && !strings.Contains(s.Note, "foot contacts") && !tests(s):
				t.Errorf("%s, and the note does not say why", f.Message)
			}
		}
	})
}

// tests reports whether something is measured in a session.
func tests(s *sessions.Session) bool {
	return slices.ContainsFunc(s.Blocks, func(b sessions.Block) bool {
		return slices.ContainsFunc(b.Exercises, func(e sessions.Exercise) bool { return e.Measure != "" })
	})
}

// What is held, climbed, walked back to or begun again takes 3 s or more a rep
// (common practice, no source): lengths, ratios and contacts a minute hang on
// it.
func TestBuiltinsHaveThePaceOfTheirWords(t *testing.T) {
	words := []string{"until you are still", "stay until", "there and back", "climb", "walk back", "walk to the start", "set yourself again", "stop dead", "hold for", "and hold."}
	builtins(t, func(t *testing.T, s *sessions.Session) {
		for _, b := range s.Blocks {
			for _, e := range b.Exercises {
				slow := slices.ContainsFunc(words, func(w string) bool { return strings.Contains(strings.ToLower(e.How), w) })
				if slow && e.Reps+e.RepsPerSide > 0 && e.Rep < 3*time.Second {
					t.Errorf("a rep of %s lasts %v, and its words ask for more: %s", e.Name, e.Rep, e.How)
				}
			}
		}
	})
}

// A session with jumps says on its first screen what shoes and floor it wants,
// what a player must have done before, and when to end a set; its easier
// variants say how often the feet land.
func TestBuiltinsWithJumpsSayWhenToStop(t *testing.T) {
	builtins(t, func(t *testing.T, s *sessions.Session) {
		if plan.Of(s).Contacts == 0 {
			return
		}
		note := strings.ToLower(s.Note)
		for _, want := range [][]string{{"shoes"}, {"floor"}, {"end a set as soon", "stop a set as soon", "leave a try out if"}} {
			if !slices.ContainsFunc(want, func(w string) bool { return strings.Contains(note, w) }) {
				t.Errorf("the note does not say %q: %s", want, s.Note)
			}
		}
		for _, b := range s.Blocks {
			for _, e := range b.Exercises {
				if jumps.Is(&e) && e.Easier.Bare {
					t.Errorf("the easier variant of %s does not say its contacts", e.Name)
				}
			}
		}
	})
}

package text

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// said returns every text that the built-in sessions and plans show a player.
func said(t *testing.T) map[string]bool {
	t.Helper()
	all := map[string]bool{}
	put := func(texts ...string) {
		for _, s := range texts {
			if s != "" {
				all[s] = true
			}
		}
	}
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			t.Fatal(err)
		}
		put(s.Title, s.For, s.Note)
		for _, b := range s.Blocks {
			put(b.Title, b.Note)
			put(b.Trains...)
			for _, e := range b.Exercises {
				put(e.Name, e.How, e.Load, e.Way, e.Easier.Name, e.Easier.How, e.Harder.Name, e.Harder.How)
				put(slices.Concat(e.Cues, e.Calls, e.Easier.Cues, e.Harder.Cues)...)
			}
		}
	}
	for _, b := range weeks.Builtins() {
		p, err := b.Plan()
		if err != nil {
			t.Fatal(err)
		}
		put(p.Title, p.For)
	}
	return all
}

// TestBuiltinsInGerman: every text of the built-in sessions has its German, and
// no German stands for a text that none of them says.
func TestBuiltinsInGerman(t *testing.T) {
	names, all := german(), said(t)
	for _, s := range slices.Sorted(maps.Keys(all)) {
		if strings.TrimSpace(names[s]) == "" {
			t.Errorf("no German for %q", s)
		}
	}
	for _, s := range slices.Sorted(maps.Keys(names)) {
		if !all[s] {
			t.Errorf("no built-in session says %q", s)
		}
	}
}

// TestLabelsStayShort: a name, a title or a cue is shown in one line of a
// window, and may not be longer in German than the format allows.
func TestLabelsStayShort(t *testing.T) {
	for _, b := range sessions.Builtins() {
		s, err := b.Session()
		if err != nil {
			t.Fatal(err)
		}
		for _, b := range German.Session(s).Blocks {
			for _, e := range b.Exercises {
				for _, cue := range e.Cues {
					if n := len([]rune(cue)); n > 32 {
						t.Errorf("cue %q has %d letters", cue, n)
					}
				}
				if n := len([]rune(e.Name)); n > 40 {
					t.Errorf("name %q has %d letters", e.Name, n)
				}
			}
		}
	}
}

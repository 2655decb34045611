package handout

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/mewkiz/flac"

	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/settings"
	"coldfloor/sessions/weeks"
	"coldfloor/sound"
)

// planned opens the plan in a folder of the test's own, and returns both.
func planned(t *testing.T) (opened weeks.Opened, dir string) {
	t.Helper()
	dir = t.TempDir()
	for name, text := range map[string]string{"plan.yaml": planText, "jumps.yaml": jumpsText} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	opened, err := weeks.Open(filepath.Join(dir, "plan.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	return opened, dir
}

// tracked hands out week 1 twice, with meddle between, and returns what was
// written the second time and whether each track that stands there plays.
func tracked(t *testing.T, heard func(again bool) sound.Options, meddle func(track string)) []string {
	t.Helper()
	opened, dir := planned(t)
	again := false
	o := Options{Plan: opened.Plan, Week: 1, Folder: filepath.Join(dir, "out"), Own: settings.Default(), Now: time.Date(2026, 12, 1, 12, 0, 0, 0, time.UTC), Paper: paper.Sizes[0],
		Heard: func(context.Context, *plan.Plan, *settings.Player) (Heard, error) {
			return Heard{Cues: heard(again)}, nil
		}}
	if _, err := Write(t.Context(), o); err != nil {
		t.Fatal(err)
	}
	meddle(filepath.Join(o.Folder, "2026-12-07-jumps.flac"))
	again = true
	list, err := Write(t.Context(), o)
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"2026-12-07-jumps.flac", "2026-12-11-jumps.flac"} {
		plays(t, filepath.Join(o.Folder, name))
	}
	return list[0].Written
}

// plays fails unless a FLAC file decodes to its end.
func plays(t *testing.T, path string) {
	t.Helper()
	s, err := flac.ParseFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	n := uint64(0)
	for {
		f, err := s.ParseNext()
		if err != nil {
			break
		}
		n += uint64(f.BlockSize)
	}
	if n == 0 || n != s.Info.NSamples {
		t.Errorf("%s: %d samples of %d", path, n, s.Info.NSamples)
	}
}

// A track that is as it would be made is not made again; one that was changed,
// cut or marked by somebody else, or of which something else is to be heard, is.
func TestTracksAreNotMadeAgain(t *testing.T) {
	three := func(bool) sound.Options { return sound.Options{Pips: 3} }
	change := func(by func([]byte) []byte) func(string) {
		return func(path string) {
			b, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(path, by(b), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
	for name, c := range map[string]struct {
		heard  func(bool) sound.Options
		meddle func(string)
		want   string
	}{
		"untouched":      {three, func(string) {}, ""},
		"a byte of it":   {three, change(func(b []byte) []byte { b[len(b)/2] ^= 1; return b }), "2026-12-07-jumps.flac"},
		"cut":            {three, change(func(b []byte) []byte { return b[:len(b)-1] }), "2026-12-07-jumps.flac"},
		"the mark's own": {three, change(func(b []byte) []byte { b[4+4+34+4+4] ^= 1; return b }), "2026-12-07-jumps.flac"},
		"empty":          {three, change(func([]byte) []byte { return nil }), "2026-12-07-jumps.flac"},
		"other pips": {func(again bool) sound.Options {
			if again {
				return sound.Options{Pips: 5}
			}
			return sound.Options{Pips: 3}
		}, func(string) {}, "2026-12-07-jumps.flac 2026-12-11-jumps.flac"},
	} {
		t.Run(name, func(t *testing.T) {
			if got := strings.Join(tracked(t, c.heard, c.meddle), " "); got != c.want {
				t.Errorf("written again: %q, want %q", got, c.want)
			}
		})
	}
}

// What was interrupted says so in words.
func TestInterrupted(t *testing.T) {
	opened, dir := planned(t)
	ctx, cancel := context.WithCancel(t.Context())
	list, err := Write(ctx, Options{Plan: opened.Plan, Week: 1, Folder: filepath.Join(dir, "out"), Own: settings.Default(), Paper: paper.Sizes[0],
		Players: []players.Player{{Player: settings.Default()}},
		Heard: func(context.Context, *plan.Plan, *settings.Player) (Heard, error) {
			cancel()
			return Heard{}, nil
		}})
	var said strings.Builder
	if textErr := Text(&said, list); textErr != nil || err == nil || !strings.Contains(said.String(), "not all of it: it was interrupted") || strings.Contains(said.String(), "context") {
		t.Errorf("%v, %v:\n%s", err, textErr, said.String())
	}
}

// Words are rendered for a track that is made, and for no other.
func TestWordsOnlyWhenATrackIsMade(t *testing.T) {
	opened, dir := planned(t)
	said, words := 0, "a"
	o := Options{Plan: opened.Plan, Week: 1, Folder: filepath.Join(dir, "out"), Own: settings.Default(), Paper: paper.Sizes[0],
		Heard: func(context.Context, *plan.Plan, *settings.Player) (Heard, error) {
			return Heard{Cues: sound.Options{Pips: 3}, Print: []byte(words), Speak: func(context.Context, *sound.Options) error {
				said++
				return nil
			}}, nil
		}}
	for _, c := range []struct {
		words string
		want  int
	}{{"a", 1}, {"a", 1}, {"b", 2}, {"b", 2}} {
		words = c.words
		if _, err := Write(t.Context(), o); err != nil || said != c.want {
			t.Errorf("%s: %v, spoken %d times, want %d", c.words, err, said, c.want)
		}
	}
}

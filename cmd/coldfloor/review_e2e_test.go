//go:build e2e

package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journalgen"
	"coldfloor/internal/tmuxtest"
)

// squadFolder is a folder of three players' journals that end this week.
func squadFolder(t *testing.T) string {
	t.Helper()
	dir := t.TempDir()
	today := time.Now().UTC().Truncate(24 * time.Hour)
	first := today.AddDate(0, 0, -(int(today.Weekday())+6)%7-7*12).Add(6 * time.Hour)
	if _, err := journalgen.Folder(dir, 3, 36, first); err != nil {
		t.Fatal(err)
	}
	return dir
}

// The screen in a real terminal: from the squad down to a session and back, in
// a window that shrinks and grows, and out.
func TestReviewOnScreen(t *testing.T) {
	for _, env := range [][]string{nil, {"LANG=C"}, {"NO_COLOR=1"}} {
		t.Run(fmt.Sprint(env), func(t *testing.T) {
			h := newHome(t, "")
			x := tmuxtest.Start(t, 100, 30, h.env(env...), binary()+" review "+squadFolder(t))
			x.WaitFor("Squad of 3", "Player 001", "Player 003")
			x.Keys("s", "s", "s", "s", "s", "s")
			x.WaitFor("sorted by load")
			x.Keys("Down", "Enter")
			x.WaitFor("[overview]", "rest kept", "last jumps")
			x.Keys("Tab")
			x.WaitFor("[weeks]", "Foot contacts a week", "week from (Monday)")
			x.Resize(40, 12)
			x.WaitFor("[weeks] 2 of 10")
			x.Resize(120, 40)
			x.Keys("Tab", "Tab")
			x.WaitFor("Load a week", "Weighted load a day", "Monotony", "Strain", "over 28 days")
			x.Keys("Tab", "Tab", "Tab", "Tab", "Tab", "Down", "Enter")
			screen := x.WaitFor("a session, set by set", "Pogo hops, 10 reps", "rest")
			if len(env) > 0 && env[0] == "LANG=C" && strings.ContainsFunc(screen, func(r rune) bool { return r > '~' }) {
				t.Errorf("not ASCII:\n%s", screen)
			}
			if len(env) > 0 && env[0] == "NO_COLOR=1" && strings.Contains(x.Coloured(), "\x1b[38") {
				t.Errorf("there is colour:\n%q", x.Coloured())
			}
			x.Keys("Escape")
			x.WaitFor("[sessions]")
			x.Keys("Escape")
			x.WaitFor("Squad of 3")
			x.Keys("q")
			if code := x.WaitExit(); code != 0 {
				t.Errorf("exit code %d", code)
			}
		})
	}
}

// A file that is no journal is reported once the screen is gone.
func TestReviewTellsOfDamage(t *testing.T) {
	dir := squadFolder(t)
	if err := os.WriteFile(filepath.Join(dir, "letter.jsonl"), []byte("Dear all\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	h := newHome(t, "")
	x := tmuxtest.Start(t, 100, 30, h.env(), binary()+" review "+dir)
	x.WaitFor("Squad of 3")
	x.Keys("Escape")
	x.WaitFor("hint: name journals, or a folder of them")
}

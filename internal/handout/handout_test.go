package handout

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/paper"
	"coldfloor/internal/plan"
	"coldfloor/internal/players"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
	"coldfloor/sound"
)

const planText = `coldfloor: 1
title: Winter
starts: 2026-12-07
weeks: 3
days: {mon: jumps.yaml, thu: jumps.yaml}
move: {2026-12-10: 2026-12-11}
`

const jumpsText = `coldfloor: 1
title: Jumps
level: intermediate
blocks:
  - title: Up
    rounds: 2
    rest: 5s
    exercises:
      - {name: Pogo hops, reps: 4, rep: 500ms, contacts: 1, easier: {name: Heel raises, contacts: 0}, floor: 2m x 1m}
`

// given writes the handouts of week 1 into a folder of their own and returns it.
func given(t *testing.T, squad string, again bool) (dir string, list []Given) {
	t.Helper()
	dir = t.TempDir()
	write := func(name, text string) {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	write("plan.yaml", planText)
	write("jumps.yaml", jumpsText)
	opened, err := weeks.Open(filepath.Join(dir, "plan.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	o := Options{Plan: opened.Plan, Week: 1, Folder: filepath.Join(dir, "out"), Own: settings.Default(), Now: time.Date(2026, 12, 1, 12, 0, 0, 0, time.UTC),
		Paper: paper.Sizes[0],
		Heard: func(context.Context, *plan.Plan, *settings.Player) (Heard, error) {
			return Heard{Cues: sound.Options{Pips: sound.DefaultPips}}, nil
		}}
	if squad != "" {
		if o.Players, err = players.Parse("squad.yaml", []byte(squad)); err != nil {
			t.Fatal(err)
		}
	}
	for range 2 {
		if list, err = Write(t.Context(), o); err != nil {
			t.Fatal(err)
		}
		if !again {
			break
		}
		write("out/keep.txt", "a file of the coach's own")
	}
	return dir, list
}

// TestWrite hands out one of everything.
func TestWrite(t *testing.T) {
	dir, list := given(t, "", false)
	for _, name := range []string{"week-01.pdf", "calendar.ics", "how-to-send-it-back.txt",
		"2026-12-07-jumps.yaml", "2026-12-07-jumps.flac", "2026-12-11-jumps.yaml", "2026-12-11-jumps.flac"} {
		if _, err := os.Stat(filepath.Join(dir, "out", name)); err != nil {
			t.Error(err)
		}
	}
	if len(list) != 1 || len(list[0].Written) != 7 || list[0].Err != nil {
		t.Errorf("given %+v", list)
	}
}

// TestSecondRun writes nothing that has not changed, and touches nothing else.
func TestSecondRun(t *testing.T) {
	dir, list := given(t, "", true)
	if g := list[0]; len(g.Written) != 0 || g.Kept != 7 {
		t.Errorf("%d written and %d kept, want 0 and 7", len(g.Written), g.Kept)
	}
	if _, err := os.Stat(filepath.Join(dir, "out/keep.txt")); err != nil {
		t.Error(err)
	}
}

// TestEachPlayer: own variants, own days away, own findings; one player's error
// stops nobody else's.
func TestEachPlayer(t *testing.T) {
	dir, list := given(t, `- {name: Ida, easier: [pogo hops]}
- {name: Mo, away: [2026-12-11]}
- {name: Lea, room: 1x1m, level: beginner}
`, false)
	read := func(name string) string {
		text, err := os.ReadFile(filepath.Join(dir, "out", name))
		if err != nil {
			t.Error(err)
		}
		return string(text)
	}
	if s := read("Ida/2026-12-07-jumps.yaml"); !strings.Contains(s, "name: Heel raises") {
		t.Errorf("Ida's session:\n%s", s)
	}
	if s := read("Lea/2026-12-11-jumps.yaml"); !strings.Contains(s, "name: Pogo hops") {
		t.Errorf("Lea's session:\n%s", s)
	}
	if len(list[2].Found) != 2 {
		t.Errorf("what was found for Lea: %+v", list[2].Found)
	}
	if list[0].Err != nil || list[1].Err == nil || list[2].Err != nil {
		t.Errorf("errors: %v; %v; %v", list[0].Err, list[1].Err, list[2].Err)
	}
}

// TestFoldersApart: names that differ only in signs get folders of their own.
func TestFoldersApart(t *testing.T) {
	_, list := given(t, "- {name: A/B}\n- {name: A-B}\n", false)
	if a, b := filepath.Base(list[0].Folder), filepath.Base(list[1].Folder); a != "A-B" || b != "A-B 2" {
		t.Errorf("folders %q and %q", a, b)
	}
}

// TestFolderName: nothing of a player's name leaves the folder, on any system.
func TestFolderName(t *testing.T) {
	for name, want := range map[string]string{"Ida": "Ida", "../../etc": "etc", "Åse Ø.": "Åse Ø", "a/b\\c": "a-b-c", "..": "player", "CON": "player CON"} {
		if got := folderName(name); got != want {
			t.Errorf("%q becomes %q, want %q", name, got, want)
		}
	}
}

// TestEachInTheirLanguage: what a player reads is in the player's own language.
func TestEachInTheirLanguage(t *testing.T) {
	dir, _ := given(t, "- {name: Ada, language: de}\n- name: Bea\n", false)
	for file, want := range map[string]string{
		"Ada/so-schickst-du-es-zurueck.txt": "coldfloor log copy -o ada.jsonl", "Bea/how-to-send-it-back.txt": "coldfloor log copy -o bea.jsonl",
		"Ada/calendar.ics": `Jumps\, Woche 1`, "Bea/calendar.ics": `Jumps\, week 1`,
	} {
		content, err := os.ReadFile(filepath.Join(dir, "out", file))
		if err != nil || !strings.Contains(string(content), want) {
			t.Errorf("%s: %v\n%s", file, err, content)
		}
	}
}

// Contacts that nobody counted make those of the page of the week a least figure.
func TestContactsAtLeast(t *testing.T) {
	s, err := sessions.Parse("a.yaml", []byte("coldfloor: 1\ntitle: S\nblocks: [{title: Up, exercises: [{name: Hop, reps: 3, contacts: 1}, {name: Tuck jumps, reps: 5}]}]"))
	if err != nil {
		t.Fatal(err)
	}
	for l, want := range map[*text.Language]string{&text.English: ", at least 3 foot contacts", &text.German: ", mindestens 3 Bodenkontakte"} {
		if got := dose(plan.Of(s), l); !strings.HasSuffix(got, want) {
			t.Errorf("%q, want %q at the end", got, want)
		}
	}
}

package logbook

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

func idle(string) bool { return false }

// overviewOf returns the overview of a journal, written into dir, with a run of
// each name, a second after the other. One of them may be withdrawn.
func overviewOf(t rapid.TB, dir, withdrawn string, ids ...string) *journal.Overview {
	t.Helper()
	var text strings.Builder
	for i, id := range ids {
		line := func(n int, event string) {
			fmt.Fprintf(&text, `{"v":1,"run":%q,"n":%d,"at":"2026-07-14T18:30:%02dZ","t_s":0,%s}`+"\n", id, n, i, event)
		}
		line(1, `"event":"set","set":{"block":1,"round":1,"exercise":1,"outcome":"done"}`)
		line(2, `"event":"finish","finish":{"outcome":"complete"}`)
		if id == withdrawn {
			line(3, `"event":"withdraw"`)
		}
	}
	path := filepath.Join(dir, "journal.jsonl")
	if err := os.WriteFile(path, []byte(text.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	all, err := journal.ReadOverview(path)
	if err != nil || len(all.Problems) > 0 {
		t.Fatal(err, all.Problems)
	}
	return all
}

func TestPick(t *testing.T) {
	all := overviewOf(t, t.TempDir(), "ZZ", "ABCD1", "ABCD12", "abX", "ZZ")
	for name, want := range map[string]string{"last": "abX", "zz": "ZZ", "abx": "abX", "ABCD1": "ABCD1", "abcd12": "ABCD12"} {
		if r, err := Pick(all, name); err != nil || r.ID != want {
			t.Errorf("Pick(%q) = %v, %v; want %s", name, r, err, want)
		}
	}
	for name, want := range map[string]string{"abc": "2 runs begin with", "q": "no run is called", "": "4 runs begin with"} {
		if _, err := Pick(all, name); err == nil || !strings.Contains(fault.Text(err), want) || !strings.Contains(fault.Text(err), "\nhint: ") {
			t.Errorf("Pick(%q): %v, want %q", name, err, want)
		}
	}
	if _, err := Pick(overviewOf(t, t.TempDir(), "ZZ", "ZZ"), "last"); err == nil || !strings.Contains(err.Error(), "deleted") {
		t.Errorf("the last of none that count: %v", err)
	}
}

// Every short name picks its own run, and no other.
func TestShortNamesPick(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		ids := rapid.SliceOfNDistinct(rapid.StringMatching(`[AB]{3,9}`), 1, 12, rapid.ID).Draw(t, "ids")
		all := overviewOf(t, dir, "", ids...)
		for id, name := range Short(all.Runs()) {
			if got, err := Pick(all, name); err != nil || got.ID != id {
				t.Fatalf("%q picks %v, %v; want %s", name, got, err, id)
			}
		}
	})
}

// Texts of a journal never reach the terminal raw.
func TestShowIsSafe(t *testing.T) {
	const evil = "a\x1b[2J\u202eb\r\nc"
	where, note, yes := evil, evil, true
	said := journal.Rating{Where: &where, Note: &note, Pain: &yes}
	run := &journal.Run{ID: "AAAA", Started: &journal.Started{Title: evil, Source: evil, Player: evil, Blocks: []journal.PlannedBlock{{Title: evil, Rounds: 1, Sets: 1}}},
		Sets:   []journal.Set{{Place: journal.Place{Block: 1, Round: 1, Exercise: 1}, Name: evil, Outcome: evil, End: evil}},
		Rests:  []journal.Rest{{End: evil}},
		Rating: said, State: journal.State(evil),
		Amendments: []journal.Line{{Event: journal.EventRating, Rating: &said}}}
	for _, text := range []string{Show(run, idle), List([]*journal.Run{run}, idle)} {
		if strings.ContainsAny(text, "\x1b\r\u202e") {
			t.Errorf("raw text of a journal: %q", text)
		}
	}
}

func TestParseDate(t *testing.T) {
	now := time.Date(2026, 7, 14, 9, 30, 0, 0, time.UTC)
	like := time.Date(2026, 7, 10, 18, 15, 0, 0, time.UTC)
	for text, want := range map[string]string{
		"2026-07-13 18:30": "2026-07-13 18:30", "2026-07-13T18:30": "2026-07-13 18:30", "2026-07-13": "2026-07-13 18:15",
		"yesterday": "2026-07-13 18:15", "Yesterday 07:05": "2026-07-13 07:05", "today": "2026-07-14 09:30",
		"today 09:00": "2026-07-14 09:00", "20:00": "2026-07-10 20:00",
	} {
		if got, err := ParseDate(text, now, like); err != nil || got.Format(dateTime) != want {
			t.Errorf("ParseDate(%q) = %v, %v; want %s", text, got, err, want)
		}
	}
	if got, err := ParseDate("2026-07-01", now, time.Time{}); err != nil || got.Format(dateTime) != "2026-07-01 12:00" {
		t.Errorf("a day alone: %v, %v", got, err)
	}
	for _, text := range []string{"", "someday", "2026-02-30", "2026-07-14 09:31", "2999-01-01", "25:00", "13/07/2026"} {
		if got, err := ParseDate(text, now, like); err == nil || !strings.Contains(fault.Text(err), "\nhint: ") {
			t.Errorf("ParseDate(%q) = %v, %v; want an error with a hint", text, got, err)
		}
	}
}

func TestParseTaken(t *testing.T) {
	if d, err := ParseTaken("1h5m"); err != nil || d != 65*time.Minute {
		t.Errorf("%v, %v", d, err)
	}
	for _, text := range []string{"", "0", "25h", "-5m", "long"} {
		if d, err := ParseTaken(text); err == nil {
			t.Errorf("ParseTaken(%q) = %v", text, d)
		}
	}
}

func TestStateWords(t *testing.T) {
	at := func(r journal.Run, live bool) string { return State(&r, func(string) bool { return live }) }
	for _, c := range []struct {
		run  journal.Run
		live bool
		want string
	}{
		{journal.Run{State: journal.Unfinished}, true, "under way"},
		{journal.Run{State: journal.Unfinished}, false, "unfinished"},
		{journal.Run{State: journal.Complete, Withdrawn: true}, false, "deleted"},
		{journal.Run{State: journal.Complete, Started: &journal.Started{Speed: 60}}, false, "rehearsal"},
		{journal.Run{State: journal.Complete, Started: &journal.Started{Source: journal.Paper}}, false, "on paper"},
		{journal.Run{State: journal.Stopped}, false, "stopped"},
	} {
		if got := at(c.run, c.live); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestOneRep: a try of one rep is not one of "1 reps".
func TestOneRep(t *testing.T) {
	for want, s := range map[string]journal.Set{
		"Long jump, 1 rep":       {Name: "Long jump", Reps: 1, Planned: 1},
		"Long jump, 0 of 1 rep":  {Name: "Long jump", Planned: 1},
		"Long jump, 2 of 4 reps": {Name: "Long jump", Reps: 2, Planned: 4},
		"Plank":                  {Name: "Plank"},
	} {
		if got := doneOf(&s); got != want {
			t.Errorf("says %q, want %q", got, want)
		}
	}
}

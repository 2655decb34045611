package check

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/settings"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

var update = flag.Bool("update", false, "write the golden files again")

// plain finds sessions for the plans below: jump-N has N contacts in four
// rounds, floor has none.
func plain(name string) (*sessions.Session, error) {
	contacts := 0
	fmt.Sscanf(name, "jump-%d", &contacts)
	exercise := "{name: Push-up, reps: 10}"
	if contacts > 0 {
		exercise = fmt.Sprintf("{name: Pogo hops, reps: %d, contacts: 1}", contacts/4)
	}
	return sessions.Parse(name, fmt.Appendf(nil, "coldfloor: 1\ntitle: %s\nblocks: [{title: Up, rounds: 4, rest: 60s, exercises: [%s]}]", name, exercise))
}

// TestWeeks holds what the rules for weeks find in each plan against the
// archive. The lines of a plan's comment "# within: 20m" and the like set what
// it is held against.
func TestWeeks(t *testing.T) {
	file := filepath.Join("testdata", "weeks.txtar")
	a, err := txtar.ParseFile(file)
	if err != nil {
		t.Fatal(err)
	}
	said := map[string]string{}
	for _, f := range a.Files {
		if strings.HasSuffix(f.Name, ".txt") {
			said[f.Name] = string(f.Data)
		}
	}
	again := &txtar.Archive{Comment: a.Comment}
	for _, f := range a.Files {
		name, ok := strings.CutSuffix(f.Name, ".yaml")
		if !ok {
			continue
		}
		got := weekFindings(t, f)
		if want := said[name+".txt"]; got != want && !*update {
			t.Errorf("%s says\n%swant\n%s", f.Name, got, want)
		}
		again.Files = append(again.Files, f, txtar.File{Name: name + ".txt", Data: []byte(got)})
	}
	if *update {
		if err := os.WriteFile(file, txtar.Format(again), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

// weekFindings returns what is said of the plan itself, except for the note on
// its contacts where nothing is above.
func weekFindings(t *testing.T, f txtar.File) string {
	t.Helper()
	p, err := weeks.Parse(f.Name, f.Data, plain)
	if err != nil {
		t.Fatalf("%v", err)
	}
	now := time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)
	o := Options{Player: settings.Default(), Now: now}
	if bytes.Contains(f.Data, []byte("# within: 10m")) {
		o.Within = 10 * time.Minute
	}
	if bytes.Contains(f.Data, []byte("# did 60 contacts on 2026-11-20")) {
		o.Jumps = []Jumped{{End: time.Date(2026, 11, 20, 18, 0, 0, 0, time.UTC), Contacts: 60}}
	}
	var b bytes.Buffer
	if err := WriteText(&b, RunWeeks(p, o)[:1]); err != nil {
		t.Fatal(err)
	}
	var kept strings.Builder
	for line := range strings.Lines(b.String()) {
		if !strings.Contains(line, "note: ") || !strings.Contains(line, "[week-contacts]") {
			kept.WriteString(line)
		}
	}
	return kept.String()
}

// TestWeeksOfSessions holds that what is found of a session in many weeks is
// one finding with its weeks.
func TestWeeksOfSessions(t *testing.T) {
	p, err := weeks.Parse("plan.yaml", []byte(`coldfloor: 1
title: T
starts: 2026-12-07
weeks: 3
days: {mon: jump-80, thu: jump-80}
grow: [{in: jump-80, what: reps, by: 5, from: 3}]`), plain)
	if err != nil {
		t.Fatal(err)
	}
	files := RunWeeks(p, Options{Player: settings.Default()})
	if len(files) != 2 || files[1].File != "jump-80" {
		t.Fatalf("findings of %v", files)
	}
	var contacts, warmUp []string
	for _, f := range files[1].Findings {
		switch f.Rule {
		case "contacts":
			contacts = append(contacts, f.Message)
		case "warm-up":
			warmUp = append(warmUp, f.Message)
		}
	}
	if len(contacts) != 1 || !strings.HasSuffix(contacts[0], "(weeks 1–3; figures of week 3)") || !strings.HasPrefix(contacts[0], "100 foot contacts") {
		t.Errorf("contacts: %q", contacts)
	}
	if len(warmUp) != 1 || !strings.HasSuffix(warmUp[0], "(weeks 1–3)") {
		t.Errorf("warm-up: %q", warmUp)
	}
}

func TestWeekList(t *testing.T) {
	for want, list := range map[string][]int{"week 4": {4, 4}, "weeks 1–3, 5": {3, 1, 2, 5}, "weeks 1, 2, 9": {1, 2, 9}} {
		if got := weekList(list); got != want {
			t.Errorf("weekList(%v) = %q, want %q", list, got, want)
		}
	}
}

// TestWeekContactsAlike: weeks that are all alike are not given as a span.
func TestWeekContactsAlike(t *testing.T) {
	p, err := weeks.Parse("alike.yaml", []byte(`coldfloor: 1
title: Alike
level: beginner
starts: 2026-12-07
weeks: 2
days: {mon: jump-80, thu: jump-80}
`), plain)
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := WriteText(&b, RunWeeks(p, Options{Player: settings.Default(), Now: time.Date(2026, 11, 25, 12, 0, 0, 0, time.UTC)})); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), ": 160 foot contacts a week; the range of level beginner is 160–200") {
		t.Errorf("says\n%s", &b)
	}
}

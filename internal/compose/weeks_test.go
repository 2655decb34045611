package compose

import (
	"math/rand/v2"
	"testing"
	"time"

	"coldfloor/internal/check"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// TestDraftedWeeksPassCheck drafts plans for random players and holds each
// against check, which may find no error and no warning.
func TestDraftedWeeksPassCheck(t *testing.T) {
	rooms := []settings.Room{{}, {Along: 3 * units.Metre, Across: 2 * units.Metre, Ceiling: 2400}, {Along: 6 * units.Metre, Across: 4 * units.Metre, Ceiling: 4000}}
	levels := []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced}
	r := rand.New(rand.NewPCG(1, 2))
	for range 20 {
		a := WeeksAnswers{Player: settings.Default(), Count: 1 + r.IntN(16), Starts: units.DateOf(time.Date(2026, 12, 1+r.IntN(31), 0, 0, 0, 0, time.UTC))}
		a.Player.Level, a.Player.Room = levels[r.IntN(3)], rooms[r.IntN(len(rooms))]
		for _, day := range r.Perm(7)[:1+r.IntN(6)] {
			a.Days = append(a.Days, time.Weekday(day))
		}
		for range r.IntN(4) {
			a.Matches = append(a.Matches, a.Starts+units.Date(r.IntN(7*a.Count+10)-3))
		}
		holdDraft(t, a)
	}
}

// holdDraft drafts one plan and checks it.
func holdDraft(t *testing.T, a WeeksAnswers) {
	t.Helper()
	src, err := Weeks(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := weeks.Parse("draft.yaml", src, weeks.From("."))
	if err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	for _, f := range check.RunWeeks(p, check.Options{Player: a.Player, Now: time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)}) {
		for _, finding := range f.Findings {
			if finding.Severity != check.Note {
				t.Errorf("%s: %s [%s]\n%s", f.File, finding.Message, finding.Rule, src)
			}
		}
	}
}

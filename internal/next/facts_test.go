package next

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"coldfloor/internal/journal"
	"coldfloor/internal/season"
	"coldfloor/internal/units"
	"coldfloor/internal/wholefile"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

const jumpsText = `coldfloor: 1
title: Jumps
blocks:
  - {title: Up, rounds: 4, rest: 60s, exercises: [{name: Pogo hops, reps: 10, contacts: 1}]}
`

// planText has days two days running, so that better ones can be proposed.
const planText = `# Ida's winter.
coldfloor: 1
title: Winter
starts: 2026-12-07 # a Monday
weeks: 4
days: {mon: jumps, tue: jumps}
grow:
  - {in: jumps, what: reps, by: 1} # slowly
`

func planOf(t *testing.T) *weeks.Plan {
	t.Helper()
	p, err := weeks.Parse("plan.yaml", []byte(planText), func(name string) (*sessions.Session, error) {
		return sessions.Parse(name, []byte(jumpsText))
	})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// at returns half past six in the evening of a day.
func at(date string) time.Time {
	d, err := units.ParseDate(date)
	if err != nil {
		panic(err)
	}
	return d.In(time.UTC, 0).Add(18*time.Hour + 30*time.Minute)
}

// played returns a run of so many of four rounds and such an effort, with a
// rest of 60 s taken so long after each.
func played(date string, rounds int, effort, rest float64, said ...journal.Statement) *journal.Run {
	r := &journal.Run{ID: date, Start: at(date), State: journal.Complete, Elapsed: 10 * time.Minute, Said: said,
		Started: &journal.Started{Title: "Jumps", Source: "jumps", Blocks: []journal.PlannedBlock{{Title: "Up", Rounds: 4, Sets: 4, Contacts: journal.CountOf(40)}}},
		Rating:  journal.Rating{RPE: &effort}}
	for i := range rounds {
		place := journal.Place{Block: 1, Round: i + 1, Exercise: 1}
		r.Sets = append(r.Sets, journal.Set{Place: place, Name: "Pogo hops", Outcome: journal.Done, Reps: 10, Planned: 10})
		r.Rests = append(r.Rests, journal.Rest{Place: place, PrescribedS: 60, TakenS: rest, End: "clock"})
	}
	return r
}

func yes() *bool { b := true; return &b }

// TestFactsOf reads off what a week's runs say.
func TestFactsOf(t *testing.T) {
	plan := planOf(t)
	knee := func(date string, n int) journal.Statement {
		return journal.Statement{At: at(date), Pain: yes(), Where: "left knee", Level: &n}
	}
	runs := []*journal.Run{
		played("2026-11-02", 4, 4, 60, knee("2026-11-02", 1)),
		played("2026-11-20", 4, 5, 60), // back after 18 days
		played("2026-11-24", 4, 6, 60),
		played("2026-12-07", 3, 7, 30, knee("2026-12-07", 3)),
	}
	now := at("2026-12-13")
	f := FactsOf(season.Of(plan, runs, units.DateOf(now)), "Ida", runs, 2, now, DefaultLimits)
	if f.Planned != 2 || f.Done != 1 || f.Missed != 1 {
		t.Errorf("%d planned, %d done, %d missed; want 2, 1, 1", f.Planned, f.Done, f.Missed)
	}
	if f.RoundsDone != 3 || f.RoundsPrescribed != 4 {
		t.Errorf("%d of %d rounds, want 3 of 4", f.RoundsDone, f.RoundsPrescribed)
	}
	if f.Rests != 3 || f.RestsCut != 3 {
		t.Errorf("%d of %d rests cut, want 3 of 3", f.RestsCut, f.Rests)
	}
	if want := (Effort{"Jumps", 7, 5, 3}); !slices.Equal(f.Efforts, []Effort{want}) {
		t.Errorf("efforts %v, want %v", f.Efforts, want)
	}
	if len(f.Pain) != 1 || f.Pain[0].New || *f.Pain[0].Level != 3 || *f.Pain[0].Before != 1 {
		t.Errorf("pain %+v", f.Pain)
	}
	if f.BackAfter != 18 || units.DateOf(f.BackSince).String() != "2026-11-20" {
		t.Errorf("back on %s after %d days", units.DateOf(f.BackSince), f.BackAfter)
	}
}

// TestWritePlan writes a proposal into the plan: the comments stay, the weeks
// before stay, and the plan reads back with what was proposed.
func TestWritePlan(t *testing.T) {
	plan := planOf(t)
	runs := []*journal.Run{played("2026-12-07", 2, 5, 60), played("2026-12-08", 4, 5, 60)}
	now := at("2026-12-13")
	s := season.Of(plan, runs, units.DateOf(now))
	p := Of(s, FactsOf(s, "Ida", runs, 2, now, DefaultLimits), runs, DefaultLimits)
	if p.Kind != Hold || len(p.Days.Moves) != 1 {
		t.Fatalf("%s, moves %+v", p.Kind, p.Days)
	}
	file := filepath.Join(t.TempDir(), "ida.yaml")
	if err := WritePlan(file, p, wholefile.Options{Mode: 0o644}); err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"# Ida's winter.", "# a Monday", "# slowly", "hold: [2]"} {
		if !strings.Contains(string(text), want) {
			t.Errorf("%q is not in the plan:\n%s", want, text)
		}
	}
	changed, err := weeks.Parse("ida.yaml", text, func(string) (*sessions.Session, error) { return sessions.Parse("jumps", []byte(jumpsText)) })
	if err != nil {
		t.Fatal(err)
	}
	if !changed.IsHold(2) || len(changed.Moves) != 1 || changed.Moves[0].From.String() != "2026-12-15" {
		t.Errorf("hold %v, moves %+v", changed.Hold, changed.Moves)
	}
	if was, is := plan.Weeks()[0].Days, changed.Weeks()[0].Days; len(was) != len(is) || was[1].Date != is[1].Date {
		t.Errorf("week 1 changed: %+v", is)
	}
}

// TestLessIsLighter writes the steps of a return as lighter weeks, no further
// than the plan goes.
func TestLessIsLighter(t *testing.T) {
	plan := planOf(t)
	p := Proposal{Week: 3, Kind: Less, Keep: []int{50, 70, 80, 90}}
	text, err := plan.Amended(p.Amendment(plan))
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Count(string(text), "keep:"); got != 2 {
		t.Errorf("%d lighter weeks, want 2:\n%s", got, text)
	}
}

// Pain said in the last 7 days speaks on the first day of a week as well, though
// the week that it was said in is not the one before the week proposed.
func TestPainOutlastsItsWeek(t *testing.T) {
	plan := planOf(t)
	level := 3
	runs := []*journal.Run{played("2026-12-11", 4, 5, 60, journal.Statement{At: at("2026-12-11"), Pain: yes(), Where: "left knee", Level: &level})}
	for date, want := range map[string]int{"2026-12-14": 1, "2026-12-17": 1, "2026-12-18": 0} {
		now := at(date)
		f := FactsOf(season.Of(plan, runs, units.DateOf(now)), "Ida", runs, 3, now, DefaultLimits)
		if len(f.Pain) != want {
			t.Errorf("on %s pain %+v, want %d", date, f.Pain, want)
		}
	}
}

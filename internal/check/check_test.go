package check

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/sessions"
	"coldfloor/sessions/sessionstest"
)

var today = time.Date(2026, 7, 14, 18, 0, 0, 0, time.UTC)

// options returns what a session is held against when nobody has said
// anything.
func options() Options { return Options{Player: settings.Default(), Now: today} }

// warm is ten minutes of warm-up, as practice has before jumping.
const warm = `
  - title: Warm up
    part: warm-up
    trains: [mobility]
    exercises:
      - {name: March, time: 10m, cues: [Tall], floor: 1m x 1m}
`

// read parses the blocks of a session for a level.
func read(t testing.TB, level, blocks string) *plan.Plan {
	t.Helper()
	src := "coldfloor: 1\ntitle: Test\n"
	if level != "" {
		src += "level: " + level + "\n"
	}
	s, err := sessions.Parse("test.yaml", []byte(src+"blocks:\n"+strings.TrimPrefix(blocks, "\n")))
	if err != nil {
		t.Fatal(err)
	}
	return plan.Of(s)
}

// of returns the findings of one rule.
func of(rule string, p *plan.Plan, o Options) []Finding {
	var found []Finding
	for _, f := range Run(p, o) {
		if f.Rule == rule {
			found = append(found, f)
		}
	}
	return found
}

// expect holds the findings of one rule to severities and a part of each
// message, as "warning: part".
func expect(t *testing.T, found []Finding, want ...string) {
	t.Helper()
	if len(found) != len(want) {
		t.Errorf("found %d, want %d: %+v", len(found), len(want), found)
		return
	}
	for i, f := range found {
		severity, part, _ := strings.Cut(want[i], ": ")
		if string(f.Severity) != severity || !strings.Contains(f.Message, part) {
			t.Errorf("found %s: %s\nwant %s", f.Severity, f.Message, want[i])
		}
		if f.Pos.Line == 0 {
			t.Errorf("no place: %+v", f)
		}
	}
}

// jumpBlock is a block of rounds × reps jumps in the main part, rest between.
func jumpBlock(rounds, reps int, rest string) string {
	return fmt.Sprintf(`
  - title: Up
    trains: [vertical power]
    rounds: %d
    rest: %s
    exercises:
      - {name: Squat jump, reps: %d, rep: 1s, contacts: 1, cues: [Soft], easier: Rise on to the toes, floor: 1m x 1m}
`, rounds, rest, reps)
}

// A power superset is 3–4 rounds of two exercises, 3–8 reps a set or 3–8 a
// side, about 90 s between rounds; ten minutes of warm-up before (common
// practice, no source). It passes without a warning.
func TestCommonPracticePasses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rounds := rapid.IntRange(3, 4).Draw(t, "rounds")
		rest := rapid.IntRange(80, 100).Draw(t, "rest")
		n := rapid.IntRange(3, 8).Draw(t, "reps")
		m := rapid.IntRange(3, 8).Draw(t, "reps a side")
		level := rapid.SampledFrom([]string{"", "level: beginner\n", "level: intermediate\n", "level: advanced\n"}).Draw(t, "level")
		second := rapid.SampledFrom([]string{
			"{name: Split squat, reps_per_side: %d, tempo: 3-1-1, sides: swap-each-round}",
			"{name: Side hop, reps_per_side: %d, contacts: 1, sides: alternate-reps}",
			"{name: Side hop, reps_per_side: %d, contacts: 1}",
			"{name: Push-up, reps: %d}",
			"{name: Throw, reps: %d}",
		}).Draw(t, "second")
		trains := rapid.SampledFrom([]string{"vertical power", "speed", "power, strength", "acceleration"}).Draw(t, "trains")
		src := "coldfloor: 1\ntitle: Superset\n" + level + "blocks:" + warm + fmt.Sprintf(`
  - title: Up
    trains: [%s]
    rounds: %d
    rest: %ds
    exercises:
      - {name: Squat jump, reps: %d, contacts: 1}
      - `+second+"\n", trains, rounds, rest, n, m)
		s, err := sessions.Parse("superset.yaml", []byte(src))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range Run(plan.Of(s), options()) {
			if f.Severity != Note {
				t.Fatalf("%s: %s [%s]\n%s", f.Severity, f.Message, f.Rule, src)
			}
		}
	})
}

// Whatever the session, every finding has a rule, a known severity, a place
// if the file gives one, and a message of one line; the same input gives
// the same findings.
func TestRunIsTotalAndPure(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sessionstest.Draw(t)
		o := options()
		o.Room = settings.Room{Along: 2000, Across: 1000, Ceiling: 2200}
		o.Within = 10 * time.Minute
		o.Player.Height = 1800
		o.Player.BirthYear = 2012
		o.Jumps = []Jumped{{End: today.Add(-30 * time.Hour)}}
		p := plan.Of(s)
		found := Run(p, o)
		for _, f := range found {
			if _, ok := Find(f.Rule); !ok || !slices.Contains([]Severity{Error, Warning, Note}, f.Severity) || f.Message == "" || strings.ContainsAny(f.Message, "\n\x1b") {
				t.Errorf("%+v", f)
			}
		}
		if again := Run(p, o); fmt.Sprint(found) != fmt.Sprint(again) {
			t.Error("a second run found something else")
		}
	})
}

func TestOff(t *testing.T) {
	p := read(t, "beginner", jumpBlock(3, 5, "90s"))
	o := options()
	o.Player.Off = []string{"warm-up"}
	if Sound(Run(p, options())) || !Sound(Run(p, o)) {
		t.Error("the warm-up rule is not turned off")
	}
	o.Player.Off = []string{"warmup"}
	if err := Off(o.Player); err == nil || !strings.Contains(err.Error(), "did you mean warm-up?") {
		t.Errorf("got %v", err)
	}
}

// Bogdanis et al., J Physiol 1995;482:467–480: 19.7 % at 0 s, 65.0 at 90 s,
// 85.5 at 360 s; nothing between them but a straight line, nothing beyond.
func TestPhosphocreatineBogdanis(t *testing.T) {
	for _, row := range []struct {
		after time.Duration
		want  float64
	}{
		{0, 19.7}, {90 * time.Second, 65.0}, {360 * time.Second, 85.5},
		{45 * time.Second, 42.35}, {225 * time.Second, 75.25},
	} {
		if got, ok := Phosphocreatine(row.after); !ok || math.Abs(got-row.want) > 1e-9 {
			t.Errorf("after %v: %v, want %v", row.after, got, row.want)
		}
	}
	for _, after := range []time.Duration{361 * time.Second, time.Hour, -1} {
		if got, ok := Phosphocreatine(after); ok {
			t.Errorf("after %v, where nothing was measured: %v", after, got)
		}
	}
	// A plain exponential of the published half-time, 56.6 s, gives 73 % and
	// 99 %, which is not what was measured.
	if at, _ := Phosphocreatine(90 * time.Second); at > 70 {
		t.Error("this is the exponential")
	}
}

func TestRecoveryIsANote(t *testing.T) {
	p := read(t, "", warm+jumpBlock(3, 5, "90s"))
	found := of("recovery", p, options())
	expect(t, found, "note: about 65 % (90 s after the work before) of the phosphocreatine")
	if got := fmt.Sprint(found[0].Figures["phosphocreatine_pct"]); got != "[65 65]" {
		t.Errorf("figures %s", got) // the first set follows the warm-up, and has no rest to show
	}
}

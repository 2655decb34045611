package check

import (
	"fmt"
	"testing"

	"coldfloor/internal/settings"
	"coldfloor/sessions"
)

// NSCA, Essentials of Strength Training and Conditioning, from memory:
// beginner 80–100, intermediate 100–120, advanced 120–140 contacts a session.
func TestContactsNSCA(t *testing.T) {
	for _, row := range []struct {
		level    string
		contacts int
		want     string
	}{
		{"beginner", 79, "note: below the range of one session at level beginner, 80–100 (NSCA Essentials, from memory)"},
		{"beginner", 80, "note: within"}, {"beginner", 100, "note: within"}, {"beginner", 101, "warning: above"},
		{"intermediate", 99, "note: below"}, {"intermediate", 120, "note: within"}, {"intermediate", 121, "warning: above"},
		{"advanced", 119, "note: below"}, {"advanced", 140, "note: within"}, {"advanced", 141, "warning: above"},
		{"", 140, "note: no level is given"}, {"", 141, "warning: no level is given"},
	} {
		t.Run(fmt.Sprint(row.level, row.contacts), func(t *testing.T) {
			p := read(t, row.level, warm+jumpBlock(1, row.contacts, "90s"))
			expect(t, of("contacts", p, options()), row.want)
		})
	}
}

func TestContactsOwnLimit(t *testing.T) {
	o := options()
	o.Player.Limits["contacts_beginner"] = settings.Range{Low: 10, High: 20}
	p := read(t, "beginner", warm+jumpBlock(1, 30, "90s"))
	expect(t, of("contacts", p, o), "warning: 10–20 (your own limit)")
}

// The level is the player's if the session says none, and the message says so.
func TestContactsAtThePlayersLevel(t *testing.T) {
	o := options()
	o.Player.Level = sessions.Beginner
	expect(t, of("contacts", read(t, "", warm+jumpBlock(1, 110, "90s")), o), "warning: above the range of one session at level beginner of the player, 80–100")
	expect(t, of("contacts", read(t, "intermediate", warm+jumpBlock(1, 110, "90s")), o), "note: within the range of one session at level intermediate, 100–120")
}

func TestContactsByBlock(t *testing.T) {
	p := read(t, "beginner", warm+jumpBlock(3, 5, "90s")+jumpBlock(2, 10, "90s"))
	found := of("contacts", p, options())
	expect(t, found, `note: 35 foot contacts ("Up" 15, "Up" 20)`)
	if found[0].Figures["block_2_contacts"] != 15 || found[0].Figures["block_3_contacts"] != 20 {
		t.Errorf("figures %v", found[0].Figures)
	}
	if found[0].Pos.Line != 3 {
		t.Errorf("in line %d, want that of level", found[0].Pos.Line)
	}
}

func TestTimedContacts(t *testing.T) {
	p := read(t, "", `
  - title: Feet
    exercises:
      - {name: Fast feet, time: 10s, contacts: 1}
      - {name: Hops, reps: 5, contacts: 1}
`)
	expect(t, of("timed-contacts", p, options()), `note: 1 set of jumps by time, "Fast feet": how often the feet land is not known`)
}

// NSCA Essentials: plyometric work 1:5 to 1:10 (from memory), maximal power
// 1:12 to 1:20 (second-hand); about 90 s between rounds (common practice).
func TestRestOfPower(t *testing.T) {
	throws := func(rest string) string {
		return `
  - title: Throw
    trains: [power]
    rounds: 2
    rest: ` + rest + `
    exercises:
      - {name: Ball throw, reps: 5}
`
	}
	for name, row := range map[string]struct {
		blocks string
		want   []string
	}{
		"1:5 of jumps":              {jumpBlock(11, 10, "55s"), nil}, // 110 s to 550 s
		"below it, under 60 s":      {jumpBlock(11, 12, "55s"), []string{"warning: 1:4.1; the handbook's range for plyometric work is 1:5 to 1:10"}},
		"below it, 60 s":            {jumpBlock(3, 20, "60s"), []string{"note: practice is about 90 s between rounds (common practice, no source), here 60 s"}},
		"power, 10 s to 240 s":      {throws("240s"), nil},
		"power, 10 s to 90 s":       {throws("90s"), []string{"note: 1:12 to 1:20 (NSCA Essentials, second-hand)"}},
		"power, 10 s to 20 s":       {throws("20s"), []string{"warning: practice is 60–90 s between rounds"}},
		"one set":                   {jumpBlock(1, 5, "0s"), nil},
		"warm-up is not asked":      {"\n  - {title: W, part: warm-up, trains: [power], rounds: 3, rest: 5s, exercises: [{name: Skip, reps: 20, contacts: 1}]}\n", nil},
		"what trains is not said":   {"\n  - {title: W, rounds: 3, rest: 5s, exercises: [{name: Skip, reps: 20, contacts: 1}]}\n", []string{"warning: 1:0.08"}},
		"a circuit without a pause": {"\n  - {title: C, trains: [power], exercises: [{name: A, reps: 5, contacts: 1}, {name: B, reps: 5, contacts: 1}]}\n", []string{"warning: here 10 s"}},
	} {
		t.Run(name, func(t *testing.T) {
			expect(t, of("rest", read(t, "", row.blocks), options()), row.want...)
		})
	}
}

// NSCA Essentials, rest by goal (second-hand): strength 2–5 min, size 30–90 s,
// endurance ≤ 30 s. ACSM 2009: 1–2 min for assistance exercises.
func TestRestByGoal(t *testing.T) {
	block := func(trains, rest string) string {
		return fmt.Sprintf("\n  - {title: B, trains: [%s], rounds: 2, rest: %s, exercises: [{name: Squat, reps: 5, tempo: 3-1-1}]}\n", trains, rest)
	}
	for _, row := range []struct {
		trains, rest string
		want         []string
	}{
		{"strength", "2m", nil},
		{"strength", "5m", nil},
		{"strength", "90s", []string{"note: the range for strength is 2–5 min (NSCA Essentials, second-hand), for assistance exercises 1–2 min (ACSM"}},
		{"strength", "60s", []string{"note: 60 s of rest from one set"}},
		{"strength", "59s", []string{"warning: 59 s of rest from one set"}},
		{"hypertrophy", "30s", nil},
		{"hypertrophy", "90s", nil},
		{"hypertrophy", "91s", []string{"note: muscle size is 30–90 s"}},
		{"muscular endurance", "30s", nil},
		{"muscular endurance", "31s", []string{"note: muscular endurance is 0–30 s"}},
		{"trunk", "5s", nil},
	} {
		t.Run(row.trains+row.rest, func(t *testing.T) {
			expect(t, of("rest", read(t, "", block(row.trains, row.rest)), options()), row.want...)
		})
	}
}

// NSCA Essentials, energy-system table, from memory: 15–30 s → 1:3 to 1:5;
// 1–3 min → 1:3 to 1:4; over 3 min → 1:1 to 1:3.
func TestRestOfConditioning(t *testing.T) {
	for _, row := range []struct {
		work, rest string // two rounds: half of rest to one of work
		want       []string
	}{
		{"20s", "120s", nil}, {"20s", "200s", nil},
		{"20s", "100s", []string{"note: 1:2.5 with efforts up to 20 s; the handbook's range for hard efforts of that length is 1:3 to 1:5"}},
		{"20s", "210s", []string{"note: 1:5.2"}},
		{"2m", "12m", nil}, {"2m", "17m", []string{"note: 1:3 to 1:4"}},
		{"4m", "8m", nil}, {"4m", "7m", []string{"note: 1:1 to 1:3"}},
	} {
		t.Run(row.work+row.rest, func(t *testing.T) {
			p := read(t, "", fmt.Sprintf("\n  - {title: B, trains: [conditioning], rounds: 2, rest: %s, exercises: [{name: Run, time: %s}]}\n", row.rest, row.work))
			expect(t, of("rest", p, options()), row.want...)
		})
	}
}

// NSCA Essentials, second-hand: 5–10 s of work at 90–100 % of maximal power.
// Practice: 3–8 reps a set or a side.
func TestEffort(t *testing.T) {
	for reps, want := range map[int][]string{
		5:  nil,
		8:  {"note: lasts 16 s; the handbook's range at maximal power is 5–10 s (NSCA Essentials, second-hand), practice is 3–8 reps"},
		9:  {"warning: lasts 18 s"},
		20: {"warning: lasts 40 s"},
	} {
		p := read(t, "", fmt.Sprintf("\n  - {title: Up, trains: [power], exercises: [{name: Squat jump, reps: %d, contacts: 1}]}\n", reps))
		expect(t, of("effort", p, options()), want...)
	}
	p := read(t, "", `
  - title: Up
    trains: [power, strength]
    rounds: 2
    rest: 90s
    exercises:
      - {name: Fast feet, time: 15s, contacts: 1}
      - {name: Split squat, reps_per_side: 8, tempo: 3-1-1}
      - {name: Push-up, reps: 12}
`)
	expect(t, of("effort", p, options()), `warning: "Fast feet" lasts 15 s`, `note: "Push-up" lasts 24 s`)
}

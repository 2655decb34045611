package check

import (
	"strings"
	"testing"
	"time"

	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

func TestSides(t *testing.T) {
	p := read(t, "", `
  - title: Strong
    rounds: 3
    rest: 90s
    exercises:
      - {name: Split squat, reps_per_side: 5}
      - {name: Lunge, reps_per_side: 5, sides: alternate-reps}
`)
	expect(t, of("sides", p, options()), "note: the left side starts all 3 sets done one side at a time")
	p = read(t, "", "\n  - {title: S, rounds: 2, rest: 90s, exercises: [{name: Split squat, reps_per_side: 5, sides: swap-each-round}]}\n")
	expect(t, of("sides", p, options()))
	p = read(t, "", `
  - title: Strong
    exercises:
      - {name: Side plank left, time: 30s}
      - {name: "Side plank, right", time: 20s}
      - {name: Left-foot hop, reps: 5}
      - {name: Right-foot hop, reps: 5}
      - {name: From left to right, reps: 3}
`)
	expect(t, of("sides", p, options()), "warning: left does 5 reps and 30 s of timed work, right 5 reps and 20 s")
}

// Ten minutes before jumping: common practice, no source. Jeffreys, RAMP,
// 2007: raise 5–10 min, second-hand.
func TestWarmUp(t *testing.T) {
	lead := func(length string) string {
		return "\n  - {title: W, part: warm-up, exercises: [{name: March, time: " + length + "}]}"
	}
	for length, want := range map[string][]string{
		"10m":    nil,
		"9m59s":  {"note: practice is 10 min (common practice"},
		"5m":     {"note: 5 min of warm-up"},
		"4m59s":  {"warning: the least is 5 min"},
		"1m":     {"warning: 60 s of warm-up comes before the first jump"},
		"no one": {"warning: no warm-up before it"},
	} {
		blocks := jumpBlock(3, 5, "90s")
		if length != "no one" {
			blocks = lead(length) + blocks
		}
		t.Run(length, func(t *testing.T) {
			expect(t, of("warm-up", read(t, "", blocks), options()), want...)
		})
	}
	expect(t, of("warm-up", read(t, "", jumpBlock(3, 5, "90s")+warm), options()), "warning: no warm-up")
	expect(t, of("warm-up", read(t, "", "\n  - {title: S, exercises: [{name: Plank, time: 30s}]}\n"), options()))
}

// Jumps before slower strength work, conditioning last: common practice, no
// source.
func TestOrder(t *testing.T) {
	const strong = "\n  - {title: Strong, trains: [strength], rounds: 2, rest: 2m, exercises: [{name: Squat, reps: 5, tempo: 3-1-1}]}\n"
	const rallies = "\n  - {title: Rallies, trains: [conditioning], rounds: 2, rest: 1m, exercises: [{name: Shuttle, time: 20s}]}\n"
	const hold = "\n  - {title: Hold, trains: [trunk], exercises: [{name: Plank, time: 20s}]}\n"
	up := jumpBlock(3, 5, "90s")
	for name, row := range map[string]struct {
		blocks string
		want   []string
	}{
		"as practice has it":    {up + strong + hold + rallies, nil},
		"trunk at the end":      {up + strong + rallies + hold, nil},
		"strength before jumps": {strong + up, []string{`warning: "Squat jump" comes after the slow strength work "Squat"`}},
		"without a tempo":       {strings.Replace(strong, ", tempo: 3-1-1", "", 1) + up, []string{`warning: "Squat jump" comes after the slow strength work "Squat"`}},
		"conditioning first":    {rallies + up + strong, []string{`warning: "Up" comes after the conditioning of "Rallies"`}},
		"contrast": {"\n  - {title: C, trains: [power, strength], rounds: 3, rest: 2m, exercises: [{name: Squat, reps: 5, tempo: 3-1-1}, {name: Hop, reps: 5, contacts: 1}]}\n",
			[]string{`note: "Hop" follows the slow strength work "Squat" within the round`}},
		"the jump first": {"\n  - {title: C, trains: [power, strength], rounds: 3, rest: 2m, exercises: [{name: Hop, reps: 5, contacts: 1}, {name: Squat, reps: 5, tempo: 3-1-1}]}\n", nil},
	} {
		t.Run(name, func(t *testing.T) {
			expect(t, of("order", read(t, "", row.blocks), options()), row.want...)
		})
	}
}

func TestTrains(t *testing.T) {
	p := read(t, "", warm+jumpBlock(2, 5, "90s")+`
  - title: Odd
    trains: [charisma]
    exercises: [{name: Smile, time: 10s}]
  - title: Mute
    exercises: [{name: Sit, time: 10s}]
`)
	expect(t, of("trains", p, options()),
		`note: what "Mute" trains is not said`,
		`note: trained: "mobility", "vertical power", "charisma"; not trained: horizontal power, lateral power, strength, trunk, conditioning`,
		`note: "charisma" is not a quality known here`)
}

func TestLength(t *testing.T) {
	p := read(t, "", "\n  - {title: B, exercises: [{name: Hold, time: 90s}, {name: Squat, reps: 5}]}\n") // 10 + 90 + 10 + 10 s
	o := options()
	expect(t, of("length", p, o))
	o.Within = 2 * time.Minute
	expect(t, of("length", p, o))
	o.Within = time.Minute
	expect(t, of("length", p, o), "warning: the session is 2:00 long, 60 s over the 60 s there are")
	o.Within, o.Player.Pace = 2*time.Minute, 1.5
	expect(t, of("length", p, o), "warning: 2:00 long as written and 2:05 at your pace of 1.5, 5 s over the 2 min there are")
}

// NSCA Essentials, from memory: 48–72 h between plyometric sessions, 1–3 a
// week.
func TestSpacing(t *testing.T) {
	p := read(t, "", jumpBlock(2, 5, "90s"))
	ago := func(hours ...int) []Jumped {
		var times []Jumped
		for _, h := range hours {
			times = append(times, Jumped{End: today.Add(-time.Duration(h) * time.Hour)})
		}
		return times
	}
	for _, row := range []struct {
		jumps []Jumped
		want  []string
	}{
		{nil, nil}, {ago(72), nil}, {ago(200), nil},
		{ago(71), []string{"note: ended 71 h ago; the range is 48–72 h (NSCA Essentials, from memory), a caution, not a proven limit: jump again from Mon 13 Jul 19:00 (48 h) to Tue 14 Jul 19:00 (72 h)"}},
		{ago(48), []string{"note: 48 h"}},
		{ago(47), []string{"warning: 47 h"}},
		{ago(90, 20, 200), []string{"warning: 20 h"}},
		{ago(72, 110), nil},
		{ago(72, 110, 150), []string{"warning: day 4 with jumps in seven days; the range is 1–3 days a week"}},
		{ago(-5), []string{"warning: ended 0 min ago"}}, // a clock that was ahead
	} {
		o := options()
		o.Jumps = row.jumps
		expect(t, of("spacing", p, o), row.want...)
	}
	// Days of the calendar count: a week ago to the day and an hour is no day of
	// these seven, whatever the clock says; two sessions of a day are one.
	o := options()
	o.Jumps = ago(72, 110, 7*24-1)
	expect(t, of("spacing", p, o))
	o.Jumps = ago(73, 74, 110)
	expect(t, of("spacing", p, o))
	// A session of which nobody has said how many jumps there were is one.
	o.Jumps = []Jumped{{End: today.Add(-20 * time.Hour), Unknown: true}}
	expect(t, of("spacing", p, o), "warning: the last session with jumps, which were not counted, ended 20 h ago")
	timed := read(t, "", "\n  - {title: S, exercises: [{name: Pogo hops, time: 10s}]}\n")
	expect(t, of("spacing", timed, o), "warning: ended 20 h ago")
	o = options()
	o.Jumps = ago(20)
	expect(t, of("spacing", read(t, "", "\n  - {title: S, exercises: [{name: Plank, time: 30s}]}\n"), o))
}

func TestFloor(t *testing.T) {
	p := read(t, "", `
  - title: B
    exercises:
      - {name: Fits, reps: 1, floor: 4.5m x 1.2m}
      - {name: Too long, reps: 1, floor: 5m x 1m}
      - {name: Turned, reps: 1, floor: 1m x 4m}
      - {name: Unsaid, reps: 1}
`)
	o := options()
	expect(t, of("floor", p, o))
	o.Player.Room = settings.Room{Along: 4500, Across: 1200}
	want := []string{`note: how much floor "Unsaid" needs`, `error: "Too long" needs a floor of 5 × 1 m, but the room has 4.5 × 1.2 m`, `note: "Turned" needs a floor of 1 × 4 m and fits`}
	expect(t, of("floor", p, o), want...)
	o.Room = settings.Room{Along: 5000, Across: 5000} // goes before that of the settings
	expect(t, of("floor", p, o), want[0])
}

// Pheasant, Bodyspace, 1996: fingertip reach ≈ 1.25 × height. Patterson &
// Peterson, MSSE 2004;36:S114: vertical jump of men 56.4 cm, of women 35.8 cm.
func TestCeiling(t *testing.T) {
	p := read(t, "", `
  - title: B
    exercises:
      - {name: Stand, reps: 1}
      - {name: Stretch, reps: 1, overhead: reach}
      - {name: Smash, reps: 1, overhead: jump}
      - {name: Hop, reps: 1, overhead: 40cm}
`)
	o := options()
	o.Room = settings.Room{Along: 4500, Across: 1200, Ceiling: 2400}
	expect(t, of("ceiling", p, o), `note: whether "Stretch" fits under the ceiling of 2.4 m is not known`,
		`warning: "Smash" reaches 3.064 m, 66.4 cm above the ceiling of 2.4 m, estimated: a standing height of 2 m, assumed because the settings give none; reach of 2.5 m`,
		`note: "Hop" reaches 2.4 m`)

	o.Player.Height = 1800
	expect(t, of("ceiling", p, o), // 2.25 m and 2.814 m, estimated; 2.2 m
		`warning: "Smash" reaches 2.814 m, 41.4 cm above the ceiling of 2.4 m, estimated: reach of 2.25 m: fingertips at about 1.25 × height`)
	o.Player.Sex = settings.Female
	expect(t, of("ceiling", p, o), `warning: "Smash" reaches 2.608 m`)

	o.Player.Reach, o.Player.Jump = 2350, 500
	expect(t, of("ceiling", p, o), `note: "Stretch" reaches 2.35 m, 5 cm below the ceiling of 2.4 m`, `error: "Smash" reaches 2.85 m, 45 cm above the ceiling of 2.4 m`)
	o.Player.Height = 2100
	expect(t, of("ceiling", p, o), `note: "Stretch"`, `error: "Smash"`, `error: "Hop" reaches 2.5 m`)
	o.Room.Ceiling = 0
	expect(t, of("ceiling", p, o))
}

// Res Q Exerc Sport 2015;86 Suppl 1:S37–44: median standing broad jump at 18
// years, boys 210 cm, girls 155 cm.
func TestTravel(t *testing.T) {
	p := read(t, "", `
  - title: B
    exercises:
      - {name: Bounds, reps: 6, travel: 1.5m}
      - {name: Standing broad jump, reps: 3}
      - {name: Long bounds, reps: 3}
      - {name: Skater bound, reps: 3}
`)
	o := options()
	o.Room = settings.Room{Along: 4500, Across: 1200}
	expect(t, of("travel", p, o), `note: how far a rep of "Long bounds" travels is not said`,
		`note: there is room for 3 reps of "Bounds" on the floor of 4.5 m before a turn, at 1.5 m a rep`,
		`note: there is room for 2 reps of "Standing broad jump" on the floor of 4.5 m before a turn, at 2.1 m a rep, estimated: median of boys at 18 years`)
	o.Player.Off = []string{}
	o.Player.BroadJump = 1400
	o.Room.Along = units.Length(1450)
	expect(t, of("travel", p, o), "note: Long bounds", `error: a rep of "Bounds" travels 1.5 m, and the floor is 1.45 m long`, `note: there is room for 1 rep of "Standing broad jump"`)
	o.Player.BroadJump = 0
	expect(t, of("travel", p, o), "note: Long bounds", "error: Bounds", "warning: travels 2.1 m")
}

func TestCuesAndEasier(t *testing.T) {
	p := read(t, "", `
  - title: W
    part: warm-up
    exercises: [{name: March, time: 1m}]
  - title: B
    exercises: [{name: Hop, reps: 3, contacts: 1}]
`)
	expect(t, of("cues", p, options()), `note: no cue for "March", "Hop"`)
	expect(t, of("easier", p, options()), `note: no easier variant of "Hop"`)
}

func TestEasierContacts(t *testing.T) {
	p := read(t, "", `
  - title: B
    exercises:
      - {name: Hop, reps: 3, contacts: 1, easier: Heel raise}
      - {name: Bound, reps: 3, contacts: 1, easier: {name: Step, contacts: 0}}
      - {name: Plank, time: 20s, easier: On the knees}
      - {name: Pogo, reps: 3, contacts: 1, easier: Heel raise}
`)
	expect(t, of("easier-contacts", p, options()), `note: the contacts of the easier variant are not given, and count as the exercise's: "Hop", "Pogo"`)
}

// NSCA Essentials, from memory: depth jumps are the most intense; none before
// puberty, nor above 46 cm over 100 kg.
func TestLevel(t *testing.T) {
	const blocks = `
  - title: B
    exercises:
      - {name: Depth jump, reps: 3, contacts: 1}
      - {name: Tuck jump, reps: 3, contacts: 1}
      - {name: Pogo hops, reps: 3, contacts: 1}
      - {name: Hip hinge before a tuck jump, reps: 3}
`
	expect(t, of("level", read(t, "advanced", blocks), options()))
	expect(t, of("level", read(t, "intermediate", blocks), options()), `warning: "Depth jump" is a jump for level advanced`)
	expect(t, of("level", read(t, "beginner", blocks), options()), "warning: Depth jump", `warning: "Tuck jump" is a jump for level intermediate, but the session is written for beginner`)
	expect(t, of("level", read(t, "", blocks), options()))
	o := options()
	o.Player.Level = sessions.Intermediate
	expect(t, of("level", read(t, "advanced", blocks), o), "warning: the session is written for level advanced, but the player's settings say intermediate", "warning: Depth jump")
	o = options()
	o.Player.BirthYear, o.Player.Mass = today.Year()-12, 101
	expect(t, of("level", read(t, "advanced", blocks), o), "warning: a player of 12; none before puberty", "note: above 100 kg from no more than 46 cm")
}

// Faigenbaum et al. 2009, Lloyd et al. 2014: supervised, volume before
// intensity.
func TestSupervision(t *testing.T) {
	p := read(t, "", jumpBlock(2, 5, "90s"))
	o := options()
	expect(t, of("supervision", p, o))
	o.Player.BirthYear = 2010
	expect(t, of("supervision", p, o), "note: born in 2010. Players under 18 train with the agreement of a qualified adult. Raise volume before intensity")
}

func TestFastRising(t *testing.T) {
	p := read(t, "", `
  - title: B
    exercises:
      - {name: Squat, reps: 3, tempo: 3-1-X}
      - {name: Lunge, reps: 3, tempo: 3-1-1, easier: {name: Half lunge, tempo: 2-0-X}}
      - {name: Row, reps: 3, tempo: 2-0-2}
`)
	expect(t, of("fast-rising", p, options()), `note: X in the tempo of "Squat", "Lunge" is as fast as possible, and counted as 1 s`)
}

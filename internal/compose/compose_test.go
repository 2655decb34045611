package compose

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/check"
	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

var levels = []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced}

// hold holds a draft to its promises and returns its plan: it is valid, no
// longer than the time there is, has a warm-up and a cool-down, passes check
// without a warning and without a note on rest or effort, trains what was asked
// for or says that it does not, and fills the time or says that it does not.
func hold(t interface{ Errorf(string, ...any) }, a Answers, player settings.Player) *plan.Plan {
	d, err := Compose(a)
	if err != nil {
		t.Errorf("%+v: %v", a, err)
		return nil
	}
	s, err := sessions.Parse("new.yaml", d.Source)
	if err != nil {
		t.Errorf("%v\n%s", err, d.Source)
		return nil
	}
	p := plan.Of(s)
	for _, f := range check.Run(p, check.Options{Player: player, Room: a.Room, Within: a.Length}) {
		if f.Severity != check.Note || f.Rule == "rest" || f.Rule == "effort" {
			t.Errorf("%+v: %s: %s [%s]", a, f.Severity, f.Message, f.Rule)
		}
	}
	last := s.Blocks[len(s.Blocks)-1]
	if s.Blocks[0].Part != sessions.WarmUp || last.Part != sessions.CoolDown {
		t.Errorf("%+v: no warm-up or no cool-down", a)
	}
	said := strings.Join(d.Notes, "\n")
	for _, q := range a.Train {
		trained := slices.ContainsFunc(s.Blocks, func(b sessions.Block) bool { return slices.Contains(b.Trains, named[q].trains) })
		if leftOut := strings.Contains(said, "left out for want of time") && strings.Contains(strings.SplitN(said, ";", 2)[0], string(q)); trained == leftOut {
			t.Errorf("%+v: trains %s %v, says it is left out %v", a, q, trained, leftOut)
		}
	}
	if spare := a.Length - p.Total; spare < 0 || spare >= notable != strings.Contains(said, "left over") {
		t.Errorf("%+v: %v long, and says %q", a, p.Total, said)
	}
	for _, n := range d.Notes {
		if first, _, _ := strings.Cut(n[1:], " "); !strings.Contains(string(d.Source), first) {
			t.Errorf("the file does not say %q", n)
		}
	}
	return p
}

// subsets returns every choice of qualities, in the order of a session.
func subsets() [][]Quality {
	var all [][]Quality
	for bits := 1; bits < 1<<len(Qualities()); bits++ {
		var some []Quality
		for i, q := range Qualities() {
			if bits&(1<<i) > 0 {
				some = append(some, q)
			}
		}
		all = append(all, some)
	}
	return all
}

// TestEveryAnswer sweeps the answers: levels, minutes, floors, ceilings and
// every choice of qualities.
func TestEveryAnswer(t *testing.T) {
	var drafts, whole, filled int
	for _, level := range levels {
		for _, minutes := range []int{10, 15, 20, 30, 60} {
			for _, room := range []settings.Room{{Along: 1000, Across: 1000}, {Along: 4500, Across: 1200}, {Along: 6000, Across: 3000}} {
				for _, ceiling := range []units.Length{0, 2100, 2400} {
					for _, train := range subsets() {
						room.Ceiling = ceiling
						a := Answers{Level: level, Length: time.Duration(minutes) * time.Minute, Room: room, Train: train}
						p := hold(t, a, settings.Default())
						if t.Failed() {
							return
						}
						drafts++
						if len(p.Session.Blocks) >= len(train)+2 {
							whole++
						}
						if a.Length-p.Total < a.Length/10 {
							filled++
						}
					}
				}
			}
		}
	}
	t.Logf("%d drafts: %d train all that was asked for and the others say what they leave out; %d fill 90 %% of the time", drafts, whole, filled)
}

// Whatever else is answered, too.
func TestComposeIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Map(rapid.IntRange(100, 800), func(cm int) units.Length { return units.Length(cm) * units.Centimetre })
		a := Answers{
			Level:  rapid.SampledFrom(levels).Draw(t, "level"),
			Length: time.Duration(rapid.IntRange(600, 3600).Draw(t, "seconds")) * time.Second,
			Room:   settings.Room{Along: side.Draw(t, "along"), Across: side.Draw(t, "across")},
			Train:  rapid.SliceOfNDistinct(rapid.SampledFrom(Qualities()), 1, 4, rapid.ID).Draw(t, "train"),
		}
		player := settings.Default()
		if rapid.Bool().Draw(t, "height known") {
			a.Height = units.Length(rapid.IntRange(140, 210).Draw(t, "height")) * units.Centimetre
			player.Height = a.Height
		}
		if rapid.Bool().Draw(t, "has ceiling") {
			a.Room.Ceiling = units.Length(rapid.IntRange(210, 400).Draw(t, "ceiling")) * units.Centimetre
		}
		hold(t, a, player)
	})
}

// What matters most is asked for first, and left out last.
func TestTheFirstAskedForStays(t *testing.T) {
	a := Answers{Level: sessions.Beginner, Length: 10 * time.Minute, Room: settings.Room{Along: 3000, Across: 2000}, Train: []Quality{Lateral, Vertical, Horizontal}}
	d, err := Compose(a)
	if err != nil || len(d.Notes) == 0 || !strings.HasPrefix(d.Notes[0], "left out for want of time: vertical, horizontal; 10 min hold a warm-up, lateral and a cool-down") {
		t.Errorf("%q, %v", d.Notes, err)
	}
}

func TestMostContactsOfThePlayer(t *testing.T) {
	a := Answers{Level: sessions.Advanced, Length: time.Hour, Room: settings.Room{Along: 5000, Across: 3000}, MostContacts: 30}
	d, err := Compose(a)
	if err != nil {
		t.Fatal(err)
	}
	s, err := sessions.Parse("new.yaml", d.Source)
	if err != nil || plan.Of(s).Contacts > 30 {
		t.Errorf("%d contacts, %v", plan.Of(s).Contacts, err)
	}
}

func TestComposeRefuses(t *testing.T) {
	room := settings.Room{Along: 4000, Across: 1200}
	for _, a := range []Answers{
		{Length: 5 * time.Minute, Room: room},
		{Length: 2 * time.Hour, Room: room},
		{Length: 30 * time.Minute, Room: settings.Room{Along: 4000, Across: 500}},
		{Length: 30 * time.Minute},
		{Length: 30 * time.Minute, Room: settings.Room{Along: 4000, Across: 1200, Ceiling: 1700}},
		{Length: 30 * time.Minute, Room: room, Train: []Quality{"arms"}},
	} {
		if d, err := Compose(a); err == nil {
			t.Errorf("%+v gave\n%s", a, d.Source)
		}
	}
}

// The last two exercises of each quality fit the smallest room and the lowest
// ceiling, whatever the level, so that a pair is always one.
func TestTheSmallestRoomHasPairs(t *testing.T) {
	a := Answers{Level: sessions.Beginner, Room: settings.Room{Along: MinSide, Across: MinSide, Ceiling: settings.AssumedHeight}}
	for _, table := range []map[Quality][]exercise{exercises, frame} {
		for q, all := range table {
			if n := len(a.pick(all)); n < 2 {
				t.Errorf("%s has %d exercises for the smallest room", q, n)
			}
		}
	}
}

func ExampleCompose() {
	d, err := Compose(Answers{Level: sessions.Beginner, Length: 10 * time.Minute, Room: settings.Room{Along: 4500, Across: 1200, Ceiling: 2400}, Train: []Quality{Vertical}})
	first, _, _ := strings.Cut(string(d.Source), "\n")
	fmt.Println(first, err)
	for _, n := range d.Notes {
		fmt.Println(n)
	}
	// Output:
	// # Drafted for 4.5 m x 1.2 m of floor under a ceiling of 2.4 m and 10 minutes; it is 9:53 long. <nil>
	// the warm-up is 5:13, the least; practice is 10 min before jumps and sprints, so add some if you can
	// 60 s of rest between rounds, the least, to fit it all in; practice is about 90 s
}

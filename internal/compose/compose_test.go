package compose

import (
	"fmt"
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

// Every combination of answers gives a file that is valid, fits time and room,
// and passes check without an error or a warning.
func TestComposeIsSound(t *testing.T) {
	levels := []sessions.Level{sessions.Beginner, sessions.Intermediate, sessions.Advanced}
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Map(rapid.IntRange(100, 800), func(cm int) units.Length { return units.Length(cm) * units.Centimetre })
		a := Answers{
			Level:  rapid.SampledFrom(levels).Draw(t, "level"),
			Length: time.Duration(rapid.IntRange(10, 60).Draw(t, "minutes")) * time.Minute,
			Room:   settings.Room{Along: side.Draw(t, "along"), Across: side.Draw(t, "across")},
			Train:  rapid.SliceOfNDistinct(rapid.SampledFrom(Qualities()), 0, 4, rapid.ID).Draw(t, "train"),
		}
		settings := settings.Default()
		if rapid.Bool().Draw(t, "height known") {
			a.Height = units.Length(rapid.IntRange(140, 210).Draw(t, "height")) * units.Centimetre
			settings.Height = a.Height
		}
		if rapid.Bool().Draw(t, "has ceiling") {
			a.Room.Ceiling = units.Length(rapid.IntRange(210, 400).Draw(t, "ceiling")) * units.Centimetre
		}
		src, err := Compose(a)
		if err != nil {
			t.Fatal(err)
		}
		s, err := sessions.Parse("new.yaml", src)
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		p := plan.Of(s)
		found := check.Run(p, check.Options{Player: settings, Room: a.Room, Within: a.Length})
		for _, f := range found {
			if f.Severity != check.Note {
				t.Errorf("%+v", f)
			}
		}
		if p.Total > a.Length {
			t.Errorf("%v is longer than %v", p.Total, a.Length)
		}
		if t.Failed() {
			t.Logf("%s", src)
		}
	})
}

// A draft uses the time it is given, up to what there is to fill it with.
func TestComposeFillsTheTime(t *testing.T) {
	for minutes := 10; minutes <= 40; minutes += 5 {
		src, err := Compose(Answers{Level: sessions.Intermediate, Length: time.Duration(minutes) * time.Minute, Room: settings.Room{Along: 5000, Across: 2000}})
		if err != nil {
			t.Fatal(err)
		}
		s, err := sessions.Parse("new.yaml", src)
		if err != nil {
			t.Fatal(err)
		}
		p := plan.Of(s)
		if p.Total < time.Duration(minutes)*time.Minute*2/3 {
			t.Errorf("of %d min only %v are used", minutes, p.Total)
		}
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
		if src, err := Compose(a); err == nil {
			t.Errorf("%+v gave\n%s", a, src)
		}
	}
}

// The last two movements of each pair fit the smallest room and the lowest
// ceiling, whatever the level, so that a pair is always one.
func TestTheSmallestRoomHasPairs(t *testing.T) {
	for q, all := range movements {
		a := Answers{Level: sessions.Beginner, Room: settings.Room{Along: MinSide, Across: MinSide, Ceiling: tall}}
		if n := len(a.pick(q, len(all))); n < 2 {
			t.Errorf("%s has %d movements for the smallest room", q, n)
		}
	}
}

func ExampleCompose() {
	src, err := Compose(Answers{Level: sessions.Beginner, Length: 10 * time.Minute, Room: settings.Room{Along: 4500, Across: 1200, Ceiling: 2400}, Train: []Quality{Vertical}})
	first, _, _ := strings.Cut(string(src), "\n")
	fmt.Println(first, err)
	// Output:
	// # Drafted for 4.5m x 1.2m of floor under a ceiling of 2.4m and 10 minutes; it is 8:35 long. <nil>
}

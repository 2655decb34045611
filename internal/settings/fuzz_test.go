package settings

import (
	"errors"
	"testing"

	"coldfloor/internal/mutate"
	"coldfloor/internal/yamlread"
)

// files is settings files.
func files() [][]byte {
	return [][]byte{Sample(), []byte(full), []byte("room: 4.5x1.2x2.4m\nreach: 2m\nheight: 2.1m\n"), []byte("limits: {rest_power: 90s}\noff: [rest]\n"), []byte("weeks: ../w.yaml\n#\n")}
}

// full has every kind of value.
const full = `name: Player One
sex: female
birth_year: 1990
level: advanced
mass: 72 kg
height: 1.75m
reach: 225cm
jump: 41 cm
broad_jump: 1.9m
pace: 1.1
room: 4.5 x 1.2 x 2.4m
cell_height: 4.5mm
volume: 70
clicks: off
background: light
language: de
`

// parsed fails if a file breaks the reader, or is let through with a value out
// of its bounds.
func parsed(t testing.TB, src []byte) {
	s, err := Parse("fuzz", src)
	if err != nil {
		var problems yamlread.Problems
		if !errors.As(err, &problems) || len(problems) == 0 {
			t.Fatalf("%v", err)
		}
		return
	}
	within := func(v, least, most float64) bool { return v == 0 || v >= least && v <= most }
	if !within(float64(s.Height), float64(minHeight), float64(maxHeight)) || !within(float64(s.Reach), float64(minReach), float64(maxReach)) ||
		!within(s.Mass, minMass, maxMass) || !within(s.CellHeight, minCell, maxCell) || s.Pace < minPace || s.Pace > maxPace || s.Volume < 0 || s.Volume > 100 {
		t.Fatalf("%+v is let through", s)
	}
	if s.Room != (Room{}) {
		if again, err := ParseRoom(s.Room.String()); err != nil || again != s.Room {
			t.Fatalf("room %v is read back as %v, %v", s.Room, again, err)
		}
	}
}

// FuzzParse looks for a settings file that breaks the reader.
func FuzzParse(f *testing.F) {
	for _, s := range files() {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, src []byte) { parsed(t, src) })
}

// TestMutated is FuzzParse with files that were changed a little.
func TestMutated(t *testing.T) { mutate.Run(t, 1000, files(), mutate.YAML, parsed) }

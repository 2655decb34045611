package settings

import (
	"bytes"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// keys are the keys of a settings file, in the order in which they are shown.
var keys = []string{"name", "sex", "birth_year", "level", "mass", "height", "reach", "jump", "broad_jump",
	"pace", "room", "cell_height", "volume", "clicks", "background", "language", "weeks", "limits", "off"}

// Bounds of what a person can be, wide enough for everybody: what lies
// outside is a slip of the hand.
const (
	minHeight, maxHeight     = 80 * units.Centimetre, 260 * units.Centimetre
	minReach, maxReach       = 100 * units.Centimetre, 340 * units.Centimetre
	minJump, maxJump         = 1 * units.Centimetre, 150 * units.Centimetre
	minBroad, maxBroad       = 10 * units.Centimetre, 400 * units.Centimetre
	minMass, maxMass         = 15, 350 // kg
	minPace, maxPace         = 0.25, 4
	minCell, maxCell         = 1, 100 // mm
	oldest                   = 120    // years
	maxName, maxRules, maxID = 80, 64, 40
	maxPath                  = 1000
)

// The words for a thing that is done or left out.
const on, off = "on", "off"

// Parse reads the settings in src, which the user knows as name. A key that
// src leaves out has its default. The error is yamlread.Problems, everything
// wrong at once; a file that holds nothing, or comments alone, is no error.
func Parse(name string, src []byte) (Player, error) {
	s := Default()
	s.File = name
	if onlyComments(src) {
		return s, nil
	}
	f, m := yamlread.Parse(name, src, keys...)
	if m != nil {
		s.read(m)
	}
	if err := f.Err(); err != nil {
		return Default(), err
	}
	return s, nil
}

// Keys returns the keys of a settings file, in the order in which they are shown.
func Keys() []string { return slices.Clone(keys) }

// From reads the settings in a mapping of a file that the user knows as file,
// and that may have other keys beside Keys. What is wrong is noted there.
func From(m *yamlread.Mapping, file string) Player {
	s := Default()
	s.File = file
	s.read(m)
	return s
}

// onlyComments reports whether src says nothing, as a settings file does whose
// every key is commented out.
func onlyComments(src []byte) bool {
	for line := range bytes.Lines(src) {
		if line = bytes.TrimSpace(line); len(line) > 0 && line[0] != '#' {
			return false
		}
	}
	return true
}

// read takes the values over from a file's mapping.
func (s *Player) read(m *yamlread.Mapping) {
	thisYear := time.Now().Year()
	s.Marks = m.Marks()
	s.Name = m.Text("name", maxName)
	s.Sex = Sex(m.Enum("sex", "", string(Female), string(Male)))
	s.BirthYear = m.Int("birth_year", thisYear-oldest, thisYear, 0)
	s.Level = sessions.Level(m.Enum("level", "", string(sessions.Beginner), string(sessions.Intermediate), string(sessions.Advanced)))
	s.Mass = quantity(m, "mass", "kg", minMass, maxMass)
	s.Height = m.Length("height", minHeight, maxHeight, 0)
	s.Reach = m.Length("reach", minReach, maxReach, 0)
	s.Jump = m.Length("jump", minJump, maxJump, 0)
	s.BroadJump = m.Length("broad_jump", minBroad, maxBroad, 0)
	s.Pace = m.Number("pace", minPace, maxPace, DefaultPace)
	m.Scalar("room", RoomHint, func(text string) (err error) {
		s.Room, err = ParseRoom(text)
		return err
	})
	s.CellHeight = quantity(m, "cell_height", "mm", minCell, maxCell)
	s.Volume = m.Int("volume", 0, 100, DefaultVolume)
	s.Clicks = m.Enum("clicks", on, on, off) == on
	s.Background = Background(m.Enum("background", string(Auto), string(Light), string(Dark), string(Auto)))
	s.Language = m.Enum("language", "", Languages...)
	s.Weeks = m.Text("weeks", maxPath)
	if s.Weeks != "" && !filepath.IsAbs(s.Weeks) {
		s.Weeks = filepath.Join(filepath.Dir(s.File), s.Weeks)
	}
	if sub := m.Mapping("limits", limitKeys()...); sub != nil {
		s.Limits.read(sub)
		s.limitMarks = sub.Marks()
	}
	s.Off = m.Texts("off", maxRules, maxID)
	if s.Reach > 0 && s.Height > 0 && s.Reach < s.Height {
		m.Problem("reach", fmt.Sprintf(`"reach" of %v is below the height of %v`, s.Reach, s.Height),
			"stand flat-footed, stretch one arm up and measure from the floor to the fingertips")
	}
}

// quantity reads a number of a unit, which may be left out: 72kg, 72 kg, 72.
func quantity(m *yamlread.Mapping, key, unit string, least, most float64) (value float64) {
	m.Scalar(key, "write it as 4"+unit+" or 4.5"+unit, func(text string) error {
		number := strings.TrimRight(strings.TrimSuffix(text, unit), " ")
		v, err := strconv.ParseFloat(number, 64)
		switch {
		case err != nil || strings.ContainsAny(number, "xXpPnN_+"):
			return errors.New("is not a number of " + unit)
		case v < least || v > most:
			return fmt.Errorf("is not between %v%s and %v%s", least, unit, most, unit)
		}
		value = v
		return nil
	})
	return value
}

// RoomHint says how to write a room.
const RoomHint = "write it as 4.5x1.2x2.4m: floor along, floor across, ceiling; the ceiling may be left out"

// maxRoom is the largest floor and ceiling taken for a room; a hall is no
// larger.
const maxRoom = 200 * units.Metre

// ParseRoom reads a room as a coach types it: 4.5x1.2x2.4m, or 4.5x1.2m with
// no ceiling to mind. The error reads on from the text.
func ParseRoom(text string) (Room, error) {
	n := 2
	if strings.Count(strings.ReplaceAll(text, "×", "x"), "x") == 2 {
		n = 3
	}
	sizes, err := units.ParseSize(text, n)
	if err != nil {
		return Room{}, err
	}
	for _, l := range sizes {
		if l > maxRoom {
			return Room{}, fmt.Errorf("is larger than a hall of %v", maxRoom)
		}
	}
	r := Room{Along: sizes[0], Across: sizes[1]}
	if n == 3 {
		r.Ceiling = sizes[2]
	}
	return r, nil
}

// String writes the room so that ParseRoom reads it back; it is empty for the
// zero Room.
func (r Room) String() string {
	switch {
	case r == Room{}:
		return ""
	case r.Ceiling == 0:
		return fmt.Sprintf("%v x %v", r.Along, r.Across)
	}
	return fmt.Sprintf("%v x %v x %v", r.Along, r.Across, r.Ceiling)
}

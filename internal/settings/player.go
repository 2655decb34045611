// Package settings holds the settings of the player and the room: what was
// measured, what is estimated in its place, and the coach's own limits.
package settings

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"github.com/adrg/xdg"

	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// Sex picks among published averages if a measured value is missing.
type Sex string

// The sexes that the published averages are given for. The empty Sex is "not
// said".
const (
	Female Sex = "female"
	Male   Sex = "male"
)

// Defaults, used if neither the file nor the program's own state says
// otherwise.
const (
	DefaultPace   = 1.0
	DefaultVolume = 80
)

// Languages are those that a player can be spoken to in, as ISO 639-1 codes.
var Languages = []string{"en", "de"}

// Background is what the terminal's own ground is taken for.
type Background string

// The grounds.
const (
	Auto  Background = "auto" // ask the terminal
	Light Background = "light"
	Dark  Background = "dark"
)

// Player is the settings of one player: the person, the room and the limits.
// The zero value of a field is "not given", except of those that have a
// default: Pace, Volume, Clicks, Background and Limits.
type Player struct {
	Name      string
	Sex       Sex
	BirthYear int
	Level     sessions.Level
	Mass      float64      // kg
	Height    units.Length // standing, without shoes
	Reach     units.Length // fingertips of one hand, standing flat-footed
	Jump      units.Length // height of a standing vertical jump
	BroadJump units.Length // standing broad jump
	Pace      float64      // the person's length of a rep, as a factor on the prescribed one
	Room      Room

	CellHeight float64 // of a character cell of the terminal, mm, for reading at a distance
	Volume     int     // of the cues, 0 to 100
	Clicks     bool    // a soft click for every paced rep
	Language   string  // of what the player sees and hears, one of Languages; empty: the system's
	Background Background

	Weeks string // path of the plan of weeks, from the settings file's folder if it is relative; empty: none

	Limits Limits
	Off    []string // rules of check that the coach does without

	File  string         // the file read; empty if there is none
	Marks yamlread.Marks // where its keys stand; empty if there is no file

	limitMarks yamlread.Marks
	remembered bool // Volume is the program's own memory of it
}

// Room is the space to train in. The zero Room is "not said".
type Room struct {
	Along, Across units.Length // floor
	Ceiling       units.Length // height; 0: no ceiling to mind, or not said
}

// Default returns the settings of somebody who has given none.
func Default() Player {
	return Player{Pace: DefaultPace, Volume: DefaultVolume, Clicks: true, Background: Auto, Limits: defaultLimits()}
}

// File returns where the settings file is looked for: coldfloor/settings.yaml
// in the XDG configuration folder. It is looked up each time, so that a
// changed environment counts.
func File() string { return filepath.Join(xdg.ConfigHome, "coldfloor", "settings.yaml") }

// Load reads the settings file and the volume last used. Without a file the
// settings are the default ones. The error is yamlread.Problems if the
// file's content is wrong; the settings are then the default ones.
func Load() (Player, error) {
	file := File()
	if _, err := os.Stat(file); errors.Is(err, fs.ErrNotExist) {
		return withVolume(Default(), nil)
	}
	return LoadFile(file)
}

// LoadFile reads the settings in file, which must be there, and the volume
// last used on this machine. Errors are as for Load.
func LoadFile(file string) (Player, error) {
	return withVolume(read(file))
}

// withVolume puts the volume last used in place of the settings' own.
func withVolume(s Player, err error) (Player, error) {
	if err != nil {
		return Default(), err
	}
	if v, ok := recallVolume(); ok {
		s.Volume, s.remembered = v, true
	}
	return s, nil
}

// read reads the settings in the file.
func read(file string) (Player, error) {
	src, err := yamlread.ReadFile(file)
	if err != nil {
		return Default(), err
	}
	return Parse(file, src)
}

// Age returns the age that somebody born in BirthYear reaches in the year of
// now, and false if the year of birth is not given. Before this year's
// birthday the person is a year younger.
func (s *Player) Age(now time.Time) (years int, ok bool) {
	return now.Year() - s.BirthYear, s.BirthYear > 0
}

// Minor reports whether the person may still be under 18: a year of birth
// alone leaves the 18th year in doubt, and doubt counts as yes.
func (s *Player) Minor(now time.Time) bool {
	years, ok := s.Age(now)
	return ok && years <= 18
}

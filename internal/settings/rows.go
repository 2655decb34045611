package settings

import (
	"fmt"
	"strconv"
	"time"

	"coldfloor/internal/yamlread"
)

// Origin is where a setting came from.
type Origin string

// The origins.
const (
	FromFile   Origin = "file"
	Remembered Origin = "remembered" // by the program, when it was last set
	Estimated  Origin = "estimated"
	ByDefault  Origin = "default"
	NotGiven   Origin = "not given"
)

// Row is one setting as it is used.
type Row struct {
	Key    string `json:"key"`
	Value  string `json:"value,omitempty"` // as the settings file would have it; empty if not given
	Origin Origin `json:"origin"`
	Line   int    `json:"line,omitempty"`   // in the file, if it came from there
	Source string `json:"source,omitempty"` // of an estimate or of a default limit
}

// Rows returns every setting as it is used, and where it came from. Now picks
// the age for estimates.
func (s *Player) Rows(now time.Time) []Row {
	rows := make([]Row, 0, len(keys)+len(AllLimits))
	for _, key := range keys {
		switch key {
		case "limits":
			rows = append(rows, s.limitRows()...)
		case "off":
			for _, rule := range s.Off {
				rows = append(rows, row(key, rule, s.Marks))
			}
		default:
			rows = append(rows, s.row(key, now))
		}
	}
	return rows
}

// row returns the row of one key of the file's root.
func (s *Player) row(key string, now time.Time) Row {
	if key == "volume" && s.remembered {
		return Row{Key: key, Value: strconv.Itoa(s.Volume), Origin: Remembered}
	}
	if f := s.estimate(key, now); f.Estimated {
		return Row{Key: key, Value: f.Length.String(), Origin: Estimated, Source: f.Source}
	}
	return row(key, s.value(key), s.Marks)
}

// row returns a row whose origin follows from where its key stands.
func row(key, value string, marks yamlread.Marks) Row {
	r := Row{Key: key, Value: value, Origin: ByDefault}
	if at, ok := marks[key]; ok {
		r.Origin, r.Line = FromFile, at.Line
	} else if value == "" {
		r.Origin = NotGiven
	}
	return r
}

// estimate returns what stands in for a key that was not measured.
func (s *Player) estimate(key string, now time.Time) Figure {
	switch key {
	case "reach":
		return s.StandingReach()
	case "jump":
		return s.VerticalJump()
	case "broad_jump":
		return s.StandingBroadJump(now)
	}
	return Figure{}
}

// value writes the value of a key as the file would have it.
func (s *Player) value(key string) string {
	switch key {
	case "name":
		return s.Name
	case "sex":
		return string(s.Sex)
	case "birth_year":
		return unlessZero(s.BirthYear)
	case "level":
		return string(s.Level)
	case "mass":
		return unlessZero(s.Mass, "kg")
	case "height":
		return unlessZero(s.Height)
	case "reach":
		return unlessZero(s.Reach)
	case "jump":
		return unlessZero(s.Jump)
	case "broad_jump":
		return unlessZero(s.BroadJump)
	case "pace":
		return unlessZero(s.Pace)
	case "room":
		return s.Room.String()
	case "cell_height":
		return unlessZero(s.CellHeight, "mm")
	case "volume":
		return strconv.Itoa(s.Volume)
	case "clicks":
		if s.Clicks {
			return on
		}
		return off
	case "background":
		return string(s.Background)
	case "language":
		return s.Language
	case "weeks":
		return s.Weeks
	}
	panic("settings: no key " + key)
}

// unlessZero writes v and its unit, or nothing for the zero value.
func unlessZero[T comparable](v T, unit ...string) string {
	var zero T
	if v == zero {
		return ""
	}
	text := fmt.Sprint(v)
	for _, u := range unit {
		text += u
	}
	return text
}

// limitRows returns the rows of the limits.
func (s *Player) limitRows() []Row {
	rows := make([]Row, len(AllLimits))
	for i, d := range AllLimits {
		rows[i] = row(d.Key, d.Format(s.Limits[d.Key]), s.limitMarks)
		rows[i].Key = "limits." + d.Key
		if rows[i].Origin == ByDefault {
			rows[i].Source = d.Source
		}
	}
	return rows
}

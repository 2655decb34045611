package tui

import (
	"coldfloor/internal/distance"
	"coldfloor/internal/units"
)

// Reading is from where the screen is to be read. The zero Reading is "not
// said".
type Reading struct {
	From units.Length
	Cell float64 // height of a character cell, mm; 0: not known
}

// Rows returns how high figures must be, in cells, so that they are easily
// read; 0 where that is not known.
func (r Reading) Rows() float64 { return distance.Rows(r.From.Metres(), r.Cell, distance.Preferred) }

// readable says whether the time can be read from where the player is, in the
// window as it is; nothing where nobody asked.
func (m runScreen) readable() string {
	if m.reading.From == 0 {
		return ""
	}
	l := &m.style.lang.Screen
	from := m.reading.From.String()
	if m.reading.Cell <= 0 {
		return l.NoCell(from)
	}
	f := m.frame(m.run.View())
	font, ok := f.timeFont(f.parts().time)
	if !ok {
		return l.NoRoom(from)
	}
	angle := distance.Angle(m.reading.From.Metres(), font.Height()*m.reading.Cell)
	switch {
	case angle < distance.Least:
		return l.TooSmall(from)
	case angle < distance.Preferred:
		return l.JustLegible(from)
	}
	return l.EasilyRead(from)
}

// Package distance works out how large characters must be to be read from
// where the player is.
package distance

import "math"

// Angles that a character's height should span at the eye, in minutes of arc
// (ISO 9241-3; NUREG-0700).
const (
	Least     = 16.0 // the smallest that counts as legible
	Preferred = 20.0 // the lower end of what is preferred; the upper is 22
)

// Height returns how high a character must be, in millimetres, to span angle
// minutes of arc at an eye metres away.
func Height(metres, angle float64) float64 {
	return 2 * metres * 1000 * math.Tan(radians(angle)/2)
}

// Angle returns how many minutes of arc a character of height millimetres
// spans at an eye metres away. It is the inverse of Height.
func Angle(metres, height float64) float64 {
	return 2 * math.Atan(height/(2*metres*1000)) * 180 * 60 / math.Pi
}

// Rows returns how high a figure must be, in rows of cells of cell
// millimetres, to span angle minutes of arc at an eye metres away. It need
// not be whole, and is 0 where either length is unknown, that is, not above 0.
func Rows(metres, cell, angle float64) float64 {
	if !(metres > 0) || !(cell > 0) {
		return 0
	}
	return Height(metres, angle) / cell
}

func radians(minutes float64) float64 { return minutes / 60 * math.Pi / 180 }

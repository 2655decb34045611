// Package units reads and writes the durations and lengths that a coach types
// by hand, in session files and in settings alike.
package units

// Length is a distance in whole millimetres. It is never negative where it
// comes from ParseLength.
type Length int64

// Units of Length.
const (
	Millimetre Length = 1
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
)

// Metres returns the length in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

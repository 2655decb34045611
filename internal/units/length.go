package units

import (
	"errors"
	"math"
	"strings"
)

// Length is a distance in whole millimetres. It is never negative if it
// comes from ParseLength.
type Length int64

// Units of Length.
const (
	Millimetre Length = 1
	Centimetre        = 10 * Millimetre
	Metre             = 1000 * Millimetre
)

// Hints on how to write a length and a size.
const (
	LengthHint = "write it as 2m, 1.8 m, 35cm or 5mm"
	SizeHint   = "write it as 2m x 1m, along x across"
)

// Metres returns the length in metres.
func (l Length) Metres() float64 { return float64(l) / float64(Metre) }

// String writes the length as a coach would type it, so that ParseLength
// reads it back unchanged: 2m, 1.85m, 35cm, 5mm, and 0m for nothing.
func (l Length) String() string {
	switch {
	case l < 0:
		return "-" + (-max(l, -math.MaxInt64)).String()
	case l == 0 || l >= Metre:
		return fraction(int64(l), int64(Metre)) + "m"
	case l >= Centimetre:
		return fraction(int64(l), int64(Centimetre)) + "cm"
	}
	return fraction(int64(l), 1) + "mm"
}

// ParseLength reads a length as a coach types it: 2m, 1.8 m, 35cm, 5mm. It is
// exact and refuses a missing unit, a negative length, one finer than a
// millimetre and one too large; the error reads on from the text, as in
// `"2"` + " has no unit".
func ParseLength(s string) (Length, error) {
	n, unit, err := splitLength(s)
	if err != nil {
		return 0, err
	}
	return lengthOf(n, unit)
}

// splitLength splits a length into its number and its unit, which is empty
// if there is none.
func splitLength(s string) (n, unit string, err error) {
	s = strings.Trim(s, " ")
	if strings.HasPrefix(s, "-") {
		return "", "", errors.New("is negative; a length is 0 or more")
	}
	n, unit = number(s)
	return n, strings.TrimLeft(unit, " "), nil
}

// lengthOf returns n of the unit.
func lengthOf(n, unit string) (Length, error) {
	var scale Length
	switch unit {
	case "m":
		scale = Metre
	case "cm":
		scale = Centimetre
	case "mm":
		scale = Millimetre
	case "":
		if digits(strings.ReplaceAll(n, ".", "")) {
			return 0, errors.New("has no unit")
		}
	}
	if scale == 0 || n == "" {
		return 0, errors.New("is not a length")
	}
	v, err := decimal(n, int64(scale))
	return Length(v), err
}

// ParseSize reads n lengths with an x, or the multiplication sign, between
// them: 2m x 1m. A length with no unit has that of the one after it, so
// 4.5x1.2x2.4m will do. None may be 0.
func ParseSize(s string, n int) ([]Length, error) {
	fields := strings.Split(strings.ReplaceAll(s, "×", "x"), "x")
	if len(fields) != n {
		return nil, errors.New("is not a size")
	}
	sizes := make([]Length, n)
	unit := ""
	for i := n - 1; i >= 0; i-- {
		number, own, err := splitLength(fields[i])
		if err != nil {
			return nil, err
		}
		if own != "" {
			unit = own
		}
		if sizes[i], err = lengthOf(number, unit); err != nil {
			return nil, err
		}
		if sizes[i] == 0 {
			return nil, errors.New("has a side of length 0")
		}
	}
	return sizes, nil
}

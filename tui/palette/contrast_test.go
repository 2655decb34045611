package palette

import (
	"fmt"
	"math"
)

// rgb is a colour's red, green and blue of sRGB, each from 0 to 1.
type rgb [3]float64

// parseHex reads a colour such as #0072b2.
func parseHex(s string) (c rgb, err error) {
	var n [3]uint8
	if _, err := fmt.Sscanf(s, "#%02x%02x%02x", &n[0], &n[1], &n[2]); err != nil || len(s) != 7 {
		return c, fmt.Errorf("%q is not a colour", s)
	}
	for i, v := range n {
		c[i] = float64(v) / 255
	}
	return c, nil
}

// hue returns the hue in degrees, as HSV has it.
func hue(c rgb) float64 {
	r, g, b := c[0], c[1], c[2]
	high, low := max(r, g, b), min(r, g, b)
	var h float64
	switch span := high - low; {
	case span == 0:
		return 0
	case high == r:
		h = math.Mod((g-b)/span+6, 6)
	case high == g:
		h = (b-r)/span + 2
	default:
		h = (r-g)/span + 4
	}
	return 60 * h
}

// contrast returns the contrast ratio of two colours, 1 to 21, whichever is
// the lighter (WCAG 2.2, definitions of contrast ratio and relative
// luminance).
func contrast(a, b rgb) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance returns the relative luminance, 0 for black to 1 for white.
func luminance(c rgb) float64 {
	linear := func(v float64) float64 {
		if v <= 0.04045 {
			return v / 12.92
		}
		return math.Pow((v+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c[0]) + 0.7152*linear(c[1]) + 0.0722*linear(c[2])
}

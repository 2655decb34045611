package palette

import "github.com/lucasb-eyer/go-colorful"

// contrast returns the contrast ratio of two colours, 1 to 21, whichever is
// the lighter (WCAG 2.2, definitions of contrast ratio and relative
// luminance).
func contrast(a, b colorful.Color) float64 {
	x, y := luminance(a), luminance(b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

// luminance returns the relative luminance, 0 for black to 1 for white.
func luminance(c colorful.Color) float64 {
	r, g, b := c.LinearRgb()
	return 0.2126*r + 0.7152*g + 0.0722*b
}

package paper

import "strings"

// Size is a size of paper, in millimetres, upright.
type Size struct {
	Name          string
	Width, Height float64
}

// Sizes are the sizes that a sheet can be printed on: A4 of ISO 216, and
// Letter of ANSI/ASME Y14.1.
var Sizes = []Size{{"a4", 210, 297}, {"letter", 215.9, 279.4}}

// FindSize returns the paper of that name, in any case of letters.
func FindSize(name string) (p Size, ok bool) {
	for _, p := range Sizes {
		if strings.EqualFold(name, p.Name) {
			return p, true
		}
	}
	return Size{}, false
}

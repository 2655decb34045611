package sheet

import "strings"

// Paper is a size of paper, in millimetres, upright.
type Paper struct {
	Name          string
	Width, Height float64
}

// Papers are the sizes that a sheet can be printed on: A4 of ISO 216, and
// Letter of ANSI/ASME Y14.1.
var Papers = []Paper{{"a4", 210, 297}, {"letter", 215.9, 279.4}}

// FindPaper returns the paper of that name, in any case of letters.
func FindPaper(name string) (p Paper, ok bool) {
	for _, p := range Papers {
		if strings.EqualFold(name, p.Name) {
			return p, true
		}
	}
	return Paper{}, false
}

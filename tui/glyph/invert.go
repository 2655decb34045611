package glyph

import "strings"

// Invert returns a line drawn in the set with every pixel turned round, so
// that what was drawn is cut out of a filled ground, with no colour needed.
// Characters of no set stay as they are.
func (s Set) Invert(line string) string {
	return strings.Map(func(r rune) rune {
		if to, ok := inverted[s][r]; ok {
			return to
		}
		return r
	}, line)
}

// inverted maps, for each set, each of its characters to the one with the
// other parts lit.
var inverted = func() (all [Sextant + 1]map[rune]rune) {
	for s := range all {
		set := Set(s)
		across, down := set.parts()
		full := 1<<(across*down) - 1
		all[s] = map[rune]rune{}
		for lit := range full + 1 {
			all[s][set.char(lit)] = set.char(full ^ lit)
		}
	}
	return all
}()

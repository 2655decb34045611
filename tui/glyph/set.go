package glyph

import (
	"strings"

	"coldfloor/internal/safetext"
)

// Set is a set of characters that a cell can be filled with. The more parts
// it divides a cell into, the finer the figures.
type Set int

// The sets, from the coarsest to the finest.
const (
	Plain    Set = iota // '#' or blank: any terminal, any locale
	Full                // █ or blank
	Half                // 1×2 parts: ▀ ▄ █
	Quadrant            // 2×2 parts: ▖ ▌ ▟ …, Unicode 1.1 to 3.2
	Sextant             // 2×3 parts: Unicode 13, missing in many fonts
)

// parts returns how many parts the set divides a cell into, across and down.
func (s Set) parts() (across, down int) {
	switch s {
	case Half:
		return 1, 2
	case Quadrant:
		return 2, 2
	case Sextant:
		return 2, 3
	}
	return 1, 1
}

// pixel returns the size of one part in cell widths. A cell is taken to be
// twice as high as it is wide, as it nearly is in all terminals.
func (s Set) pixel() (width, height float64) {
	across, down := s.parts()
	return 1 / float64(across), 2 / float64(down)
}

// quadrants holds the character for each set of lit quadrants: bit 0 is the
// upper left, 1 the upper right, 2 the lower left, 3 the lower right.
var quadrants = [16]rune([]rune(" ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█"))

// char returns the character with the given parts lit, numbered from bit 0
// row by row.
func (s Set) char(lit int) rune {
	switch s {
	case Full:
		return [2]rune{' ', '█'}[lit]
	case Half:
		return [4]rune{' ', '▀', '▄', '█'}[lit]
	case Quadrant:
		return quadrants[lit]
	case Sextant:
		return sextant(lit)
	}
	return [2]rune{' ', '#'}[lit]
}

// sextant returns the character for six lit parts. The block that starts at
// U+1FB00 leaves out the four that older blocks have.
func sextant(lit int) rune {
	switch {
	case lit == 0:
		return ' '
	case lit == 0b010101:
		return '▌'
	case lit == 0b101010:
		return '▐'
	case lit == 0b111111:
		return '█'
	case lit > 0b101010:
		lit -= 3
	case lit > 0b010101:
		lit -= 2
	default:
		lit--
	}
	return rune(0x1FB00 + lit)
}

// Best returns the finest set that the terminal described by the environment
// surely shows. getenv is os.Getenv or like it; goos is a runtime.GOOS; font is
// what the terminal's font has, nil where that is not known.
//
// Without a UTF-8 locale that is Plain, on the Linux console what its font has, in
// the old Windows console Half, else Quadrant. Sextant needs a terminal known to
// draw those characters itself, whatever its font; a terminal multiplexer hides
// which one that is.
func Best(getenv func(string) string, goos string, font safetext.Repertoire) Set {
	term := getenv("TERM")
	switch {
	case term == "dumb", goos != "windows" && !utf8Locale(getenv):
		return Plain
	case font != nil:
		return finest(font)
	case term == "linux", goos == "windows" && getenv("WT_SESSION") == "" && term == "":
		return Half
	case getenv("TMUX") == "" && drawsSextants(term, getenv("TERM_PROGRAM")):
		return Sextant
	}
	return Quadrant
}

// finest returns the finest set that a font has.
func finest(font safetext.Repertoire) Set {
	switch {
	case font.Has(string(quadrants[1:])):
		return Quadrant
	case font.Has("▀▄█"):
		return Half
	case font.Has("█"):
		return Full
	}
	return Plain
}

// utf8Locale reports whether the locale's characters are UTF-8. The first of
// the three that is set counts (POSIX.1-2017, Base Definitions, 8.2).
func utf8Locale(getenv func(string) string) bool {
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} {
		if v := strings.ToLower(getenv(name)); v != "" {
			return strings.Contains(v, "utf-8") || strings.Contains(v, "utf8")
		}
	}
	return false
}

// drawsSextants reports whether a terminal is known to draw the characters
// from U+1FB00 itself (from memory).
func drawsSextants(term, program string) bool {
	switch term {
	case "xterm-kitty", "foot", "foot-extra", "xterm-ghostty", "contour", "wezterm":
		return true
	}
	return program == "WezTerm" || program == "ghostty"
}

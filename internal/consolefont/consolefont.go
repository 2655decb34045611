// Package consolefont finds out which characters the Linux console shows. Its
// font is loaded by the system, and has 256 or 512 of them: those that most
// systems load lack characters that the kernel's own font has.
package consolefont

import (
	"os"

	"coldfloor/internal/safetext"
)

// Of returns the characters of the font of the Linux console that stream is, and
// nil if it is none, or does not tell. getenv is os.Getenv or like it.
func Of(stream any, getenv func(string) string) safetext.Repertoire {
	f, ok := stream.(*os.File)
	if !ok || getenv("TERM") != "linux" {
		return nil
	}
	return repertoire(pairs(f))
}

// pair is a character and its place in the font: struct unipair of linux/kd.h.
type pair struct{ char, place uint16 }

// repertoire returns the characters of a font's table.
func repertoire(table []pair) safetext.Repertoire {
	if len(table) == 0 {
		return nil
	}
	r := safetext.Repertoire{}
	for _, p := range table {
		r[rune(p.char)] = p.place
	}
	return r
}

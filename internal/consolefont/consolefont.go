// Package consolefont finds out which characters the Linux console can show. The
// system loads a font of 256 or 512 characters into it, and most of those fonts
// lack some that the kernel's own font has.
package consolefont

import (
	"os"

	"coldfloor/internal/safetext"
)

// Of returns the characters in the font of the Linux console that stream writes
// to, or nil if stream is no such console or does not tell. getenv is os.Getenv or
// like it.
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

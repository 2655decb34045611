package safetext

import (
	"iter"

	"github.com/charmbracelet/x/ansi"
)

// Characters returns the characters of s as a reader sees them: grapheme
// clusters (Unicode Standard Annex 29). Together they are s.
func Characters(s string) iter.Seq[string] {
	return func(yield func(string) bool) {
		for s != "" {
			c, _ := ansi.FirstGraphemeCluster(s, ansi.GraphemeWidth)
			if c == "" || !yield(c) {
				return
			}
			s = s[len(c):]
		}
	}
}

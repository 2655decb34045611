package yamlread

import (
	"slices"
	"strings"

	"github.com/agnivade/levenshtein"
)

// Nearest returns the one of the known words that somebody who typed word most
// likely meant, or "" where none is near: at most a third of its letters
// differ; letters in a wrong order count as one. Case, and whether - or _ joins
// the parts, make no difference.
func Nearest(word string, known []string) string {
	const longest = 64 // no word of ours is longer
	if len(word) > longest {
		return ""
	}
	word = plain(word)
	best, least := "", len(word)/3+1
	for _, k := range known {
		d := levenshtein.ComputeDistance(word, plain(k))
		if d > 1 && letters(word) == letters(plain(k)) {
			d = 1
		}
		if d < least {
			best, least = k, d
		}
	}
	return best
}

// letters returns the letters of s in order.
func letters(s string) string {
	r := []rune(s)
	slices.Sort(r)
	return string(r)
}

// joints are what may join the parts of a word.
var joints = strings.NewReplacer("-", "", "_", "", " ", "")

// plain returns s without what Nearest ignores.
func plain(s string) string { return joints.Replace(strings.ToLower(s)) }

// Package nearest finds the word that somebody most likely meant to type.
package nearest

import (
	"slices"
	"strings"
)

// longest is the longest word that is looked at; no word of ours is longer.
const longest = 64

// Word returns the one of the known words that somebody who typed word most
// likely meant, or "" if none is near: about a third of its letters differ at most (2 of 5);
// letters in a wrong order count as one. Case, and whether - or _ joins the
// parts, make no difference.
func Word(word string, known []string) string {
	if len(word) > longest {
		return ""
	}
	word = plain(word)
	best, least := "", (len(word)+1)/3+1
	for _, k := range known {
		d := distance([]rune(word), []rune(plain(k)))
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

// plain returns s without what Word ignores.
func plain(s string) string { return joints.Replace(strings.ToLower(s)) }

// distance returns how many letters must be added, taken out or changed to
// make a into b (V. I. Levenshtein, Soviet Physics Doklady 1966;10:707).
func distance(a, b []rune) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, from := range a {
		diagonal := row[0]
		row[0] = i + 1
		for j, to := range b {
			change := diagonal
			if from != to {
				change++
			}
			diagonal = row[j+1]
			row[j+1] = min(change, diagonal+1, row[j]+1)
		}
	}
	return row[len(b)]
}

package nearest

import (
	"strings"
	"testing"
)

func TestWord(t *testing.T) {
	known := []string{"title", "rest", "rest_after", "reps", "reps_per_side", "swap-each-round", "cues"}
	for word, want := range map[string]string{
		"titel": "title", "Title": "title", "rset": "rest", "rest-after": "rest_after", "restAfter": "rest_after",
		"resp": "rest", "repsperside": "reps_per_side", "swap_each_round": "swap-each-round", "cue": "cues", "rest": "rest",
		"sets": "", "x": "", "": "", "weather": "", strings.Repeat("rest", 99): "", "跳": "",
	} {
		if got := Word(word, known); got != want {
			t.Errorf("Word(%q) = %q, want %q", word, got, want)
		}
	}
}

// Pairs whose distance textbooks give (from memory).
func TestDistance(t *testing.T) {
	for pair, want := range map[[2]string]int{
		{"kitten", "sitting"}: 3, {"saturday", "sunday"}: 3, {"", "abc"}: 3, {"same", "same"}: 0, {"flaw", "lawn"}: 2,
	} {
		if got := distance([]rune(pair[0]), []rune(pair[1])); got != want {
			t.Errorf("distance(%q, %q) = %d, want %d", pair[0], pair[1], got, want)
		}
		if got := distance([]rune(pair[1]), []rune(pair[0])); got != want {
			t.Errorf("distance(%q, %q) = %d, want %d", pair[1], pair[0], got, want)
		}
	}
}

package plain

import (
	"strings"
	"time"
)

// wordsPerMinute is how fast a line is taken to be read aloud: the pace at
// which speech in English is commonly set (common practice, no source).
const wordsPerMinute = 175

// ReadingTime returns how long it takes to read text aloud. A word with a
// hyphen in it counts as two.
func ReadingTime(text string) time.Duration {
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '-' || r == '/' })
	return time.Duration(len(words)) * time.Minute / wordsPerMinute
}

// fitted returns must, and of the further parts each that there is time to
// read within d, in their order, the parts with commas between.
func fitted(d time.Duration, must string, more ...string) string {
	for _, m := range more {
		if m == "" {
			continue
		}
		if longer := must + ", " + m; ReadingTime(longer) <= d {
			must = longer
		}
	}
	return must
}

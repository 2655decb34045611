package report

import (
	"regexp"
	"strings"
	"sync"

	"coldfloor/internal/paper"
)

// figures are the figures whose parts belong on one line: 24 of 60 (40 %)!, and a
// number with its unit.
var figures = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`\d+ of \d+( \([^ ()]+( %)?\))?!?|\d (s|min|h|cm|kg|m)\b|\d %`)
})

// unbroken returns a text whose figures no line is broken in, for paper and
// pages; on a terminal every space is a plain one.
func unbroken(text string) string {
	return figures().ReplaceAllStringFunc(text, func(f string) string { return strings.ReplaceAll(f, " ", string(paper.NoBreak)) })
}

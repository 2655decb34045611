// Package yamlread reads hand-written YAML strictly: every value keeps its
// position, every problem of a file is reported at once, and nothing in a file
// can cost more than a bounded amount of memory or reach the terminal raw.
package yamlread

import (
	"cmp"
	"fmt"
	"strings"
)

// Pos is a place in a file. Line and Column count from 1, columns in
// characters; the zero Pos is "no known place".
type Pos struct{ Line, Column int }

// Marks holds where the keys of one mapping stand: the position of each key
// by its name, and the mapping's own start under "".
type Marks map[string]Pos

// At returns where key stands, or the start of its mapping when the file does
// not give that key.
func (m Marks) At(key string) Pos {
	if p, ok := m[key]; ok {
		return p
	}
	return m[""]
}

// Problem is one thing wrong with a file, in words that say how to mend it.
type Problem struct {
	File    string // as the user named it
	Pos     Pos
	Message string // what is wrong; no final full stop
	Hint    string // how to mend it; empty if the message says it all
}

// Error returns "FILE:LINE:COLUMN: message", and the hint on a second line.
func (p Problem) Error() string {
	s := fmt.Sprintf("%s:%d:%d: %s", p.File, p.Pos.Line, p.Pos.Column, p.Message)
	if p.Hint != "" {
		s += "\nhint: " + p.Hint
	}
	return s
}

// Problems is everything wrong with a file, in the order of its lines. It is
// an error when it is not empty.
type Problems []Problem

// Error returns every problem, one after the other.
func (ps Problems) Error() string {
	lines := make([]string, len(ps))
	for i, p := range ps {
		lines[i] = p.Error()
	}
	return strings.Join(lines, "\n")
}

// compare orders places as they follow each other in the file.
func (p Pos) compare(q Pos) int {
	return cmp.Or(cmp.Compare(p.Line, q.Line), cmp.Compare(p.Column, q.Column))
}

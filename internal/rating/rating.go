// Package rating reads what a player says of a session: rounds, effort, pain.
package rating

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
	"coldfloor/internal/safetext"
	"coldfloor/internal/text"
	"coldfloor/internal/units"
)

// AskAfter says when the effort is properly asked (Foster et al. 2001).
var AskAfter = text.English.Form.AskAfter

// ScaleLine returns the session-RPE scale in one line, as commands have it. From
// Foster et al., J Strength Cond Res 2001;15:109–115.
func ScaleLine() string { return strings.Join(text.English.Form.Scale(), ", ") }

// ScaleLines returns the scale in lines of at most width cells, each figure with
// its word in one of them.
func ScaleLines(l *text.Language, width int) string {
	return strings.Join(safetext.WrapParts(l.Form.Scale(), width), "\n")
}

// ParseRPE reads an effort from 0 to 10, halves and finer allowed, with a point or
// a comma.
func ParseRPE(s string) (float64, error) {
	v, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(s), ",", ".", 1), 64)
	if err != nil || math.IsNaN(v) || v < 0 || v > 10 {
		return 0, fault.New(ScaleLine(), "effort %q is not a number from 0 to 10", s)
	}
	return v, nil
}

// ParseRounds reads completed rounds, a number a block, with commas or spaces
// between. If no blocks are known, any number of them will do.
func ParseRounds(s string, blocks []journal.PlannedBlock) ([]int, error) {
	var rounds []int
	for _, field := range strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ' ' }) {
		n, err := strconv.Atoi(field)
		if err != nil || n < 0 || n > math.MaxInt32 {
			return nil, fault.New("give a number a block, such as 3,3,2", "%q is not a number of rounds", field)
		}
		rounds = append(rounds, n)
	}
	if len(rounds) == 0 {
		return nil, fault.New("give a number a block, such as 3,3,2", "no rounds are given")
	}
	if len(blocks) == 0 {
		return rounds, nil
	}
	if len(rounds) != len(blocks) {
		return nil, fault.New(prescribed(blocks), "rounds are given for %s, but the session has %d", units.Count(len(rounds), "block"), len(blocks))
	}
	for i, b := range blocks {
		if rounds[i] > b.Rounds {
			return nil, fault.New(prescribed(blocks), "%s of block %d are given, but it has %d", units.Count(rounds[i], "round"), i+1, b.Rounds)
		}
	}
	return rounds, nil
}

// AllRounds returns every prescribed round of every block.
func AllRounds(blocks []journal.PlannedBlock) ([]int, error) {
	if len(blocks) == 0 {
		return nil, fault.New("name a session file, or give --rounds", "it is not known what was prescribed")
	}
	rounds := make([]int, len(blocks))
	for i, b := range blocks {
		rounds[i] = b.Rounds
	}
	return rounds, nil
}

// ParsePainLevel reads how strong pain was, a whole number from 0, none, to 10.
func ParsePainLevel(s string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < 0 || n > 10 {
		return 0, fault.New("0 is none, 10 the worst that you can think of", "pain %q is not a whole number from 0 to 10", s)
	}
	return n, nil
}

// prescribed says what the blocks ask for.
func prescribed(blocks []journal.PlannedBlock) string {
	parts := make([]string, len(blocks))
	for i, b := range blocks {
		parts[i] = fmt.Sprintf("%d of %q", b.Rounds, b.Title)
	}
	return "prescribed are " + strings.Join(parts, ", ")
}

// SetPain reads where it hurts, or "none", into r.
func SetPain(r *journal.Rating, s string) error {
	where := strings.TrimSpace(s)
	switch strings.ToLower(where) {
	case "":
		return fault.New("name the place, such as \"left knee\", or say none", "the place of the pain is missing")
	case "none", "no", "keine", "nein":
		where = ""
	}
	pain := where != ""
	r.Pain, r.Where = &pain, &where
	return nil
}

package review

import (
	"cmp"
	"slices"
	"strings"
)

// Column is what a squad is sorted by.
type Column string

// The columns of a squad's table.
const (
	ByName   Column = "name"
	ByLast   Column = "last"   // when the last session was
	ByRounds Column = "rounds" // part of the rounds done
	ByRest   Column = "rest"   // part of the rests kept
	ByLoad   Column = "load"   // of the last seven days
	ByPain   Column = "pain"   // sessions with pain
)

// Columns is every column, in the order of the table.
var Columns = []Column{ByName, ByLast, ByRounds, ByRest, ByLoad, ByPain}

// Sort sorts the players by a column, the least first unless reversed; players
// who are alike in it are sorted by name. One who has no such figure comes last
// both ways.
func (s *Squad) Sort(by Column, reverse bool) {
	slices.SortStableFunc(s.Players, func(a, b *Player) int {
		return cmp.Or(compare(by, reverse, a, b), strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)), strings.Compare(a.Name, b.Name))
	})
}

func compare(by Column, reverse bool, a, b *Player) int {
	if by == ByName {
		if reverse {
			a, b = b, a
		}
		return strings.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name))
	}
	x, knownX := a.figure(by)
	y, knownY := b.figure(by)
	switch {
	case knownX != knownY && knownX:
		return -1
	case knownX != knownY:
		return 1
	case reverse:
		return cmp.Compare(y, x)
	}
	return cmp.Compare(x, y)
}

// figure returns what a player is sorted by, and whether they have it.
func (p *Player) figure(by Column) (float64, bool) {
	switch by {
	case ByLast:
		return float64(p.Last.Unix()), !p.Last.IsZero()
	case ByRounds:
		return p.Rounds.Part()
	case ByRest:
		return Share{p.Rest.Kept, p.Rest.Count}.Part()
	case ByLoad:
		return p.Seven.Total, true
	case ByPain:
		return float64(p.Painful), true
	}
	return 0, false
}

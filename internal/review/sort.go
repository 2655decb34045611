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
	ByTrouble  Column = "trouble"  // the gravest first, then who was last seen longest ago
	ByName     Column = "name"     //
	ByLast     Column = "last"     // days since the last session
	BySessions Column = "sessions" // fewest in 14 days, of those planned if there is a plan
	ByRest     Column = "rest"     // part of the rests of 14 days that were cut short
	ByContacts Column = "contacts" // of this week against the weeks before
	ByLoad     Column = "load"     // of seven days against the weeks before
	ByRunning  Column = "running"  // days without one of rest
	ByJumps    Column = "jumps"    // who may jump again last
	ByPain     Column = "pain"     // the gravest of the latest
)

// Columns is every column, in the order of the table.
var Columns = []Column{ByTrouble, ByName, ByLast, BySessions, ByRest, ByContacts, ByLoad, ByRunning, ByJumps, ByPain}

// Sort sorts the players by a column, the worst first unless reversed; by name
// in the order of the alphabet. Who has no such figure is not taken for the
// best: they stand between those that Marked reports and the others, both ways.
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
	if reverse {
		a, b = b, a
	}
	x, knownX := a.figures(by)
	y, knownY := b.figures(by)
	if d := cmp.Compare(class(b, by, knownY), class(a, by, knownX)); d != 0 {
		return d
	}
	return slices.Compare(y, x)
}

// class puts what is marked before what is not known, and that before the rest.
func class(p *Player, by Column, known bool) int {
	switch {
	case p.Marked(by):
		return 2
	case !known:
		return 1
	}
	return 0
}

// Marked reports whether a player's figure in a column is one to look at.
func (p *Player) Marked(by Column) bool {
	s := &p.Standing
	switch by {
	case ByTrouble, ByName:
		return s.Trouble > NoTrouble
	case ByLast:
		return s.Known && s.Since >= SinceMany || !s.Known && p.hasPlan()
	case BySessions:
		return s.Missed >= MissedMany
	case ByRest:
		return s.CutsMany()
	case ByRunning:
		return s.Running > RunningMax
	case ByPain:
		_, recent := p.GravestPain()
		return recent
	}
	return false
}

// hasPlan reports whether a plan of weeks has asked something of the player so
// far.
func (p *Player) hasPlan() bool {
	return p.Season != nil && p.Season.Between(p.Season.Plan.Starts, p.Season.Today).Planned > 0
}

// figures returns what a player is sorted by, the worst the largest, and
// whether they have it.
func (p *Player) figures(by Column) ([]float64, bool) {
	s := &p.Standing
	switch by {
	case ByTrouble:
		return append([]float64{float64(s.Trouble)}, p.grave()...), true
	case ByLast:
		return []float64{float64(s.Since)}, s.Known
	case BySessions:
		if s.Held {
			return []float64{float64(s.Missed), float64(s.Planned - s.Kept)}, true
		}
		return []float64{-float64(s.Sessions)}, s.Known
	case ByRest:
		part, ok := s.Cut.Part()
		return []float64{part}, ok
	case ByContacts:
		return against(float64(s.Contacts.N), s.ContactsUsual, s.Contacts.Known)
	case ByLoad:
		return against(s.Load.Mean, s.LoadUsual, s.Load.Weeks > 0 && !s.Load.AtLeast)
	case ByRunning:
		return []float64{float64(s.Running)}, s.Known
	case ByJumps:
		if p.Jumps == nil {
			return []float64{0}, s.Known
		}
		return []float64{float64(p.Jumps.Earliest.Unix())}, true
	case ByPain:
		return p.hurt(), s.Known
	}
	return nil, false
}

// grave returns what tells two players of one trouble apart.
func (p *Player) grave() []float64 {
	s := &p.Standing
	since := float64(s.Since)
	switch s.Trouble {
	case HurtsBadly, Hurts:
		return append(p.hurt(), since)
	case Away:
		return []float64{float64(s.Missed), since}
	case CutsRests:
		part, _ := s.Cut.Part()
		return []float64{part, since}
	}
	return []float64{since}
}

// hurt returns how grave a player's pain is: whether it is of the last 14 days,
// severe, its number, and when it was said.
func (p *Player) hurt() []float64 {
	pain, recent := p.GravestPain()
	if pain == nil {
		return []float64{0, 0, 0, 0}
	}
	g := pain.grave()
	if recent {
		return []float64{1, float64(g[0]), float64(g[1]), float64(pain.At.Unix())}
	}
	return []float64{0, float64(g[0]), float64(g[1]), float64(pain.At.Unix())}
}

// against returns a figure as a part of what is usual, and false if one of them
// is not known.
func against(now float64, usual Usual, known bool) ([]float64, bool) {
	if !known || usual.Weeks == 0 || usual.AtLeast {
		return nil, false
	}
	if usual.Mean == 0 {
		return []float64{min(now, 1) * 1e9}, true
	}
	return []float64{now / usual.Mean}, true
}

package weeks_test

import (
	"fmt"
	"math/big"
	"slices"
	"sort"
	"strings"
	"time"
)

// What follows reads the format once more, slowly and from its words alone, so
// that the package can be held against it: dates are those of package time,
// every figure is a fraction, times are in seconds.

type oExercise struct {
	name, key string // key: reps, reps_per_side, time, time_per_side
	v         *big.Rat
}

type oBlock struct {
	title, part     string
	rounds          int64
	rest, restAfter *big.Rat // nil: not written
	exercises       []oExercise
}

type oSession struct {
	name   string
	blocks []oBlock
}

type oSlot struct {
	session, at string
	only        []int // nil: every week
}

type oGrow struct {
	in, what          string
	blocks, exercises []string
	by                *big.Rat // of percent too
	percent           bool
	each              []*big.Rat
	every, from       int // 0: not written
	until             int
	limit             *big.Rat
}

type oPlan struct {
	starts   time.Time
	weeks    int
	sessions []oSession
	days     map[string][]oSlot
	grow     []oGrow
	lighter  map[int]int64 // whole percent
	hold     []int
	away     [][2]time.Time
	move     map[time.Time]time.Time
}

type oDay struct {
	date, first time.Time
	at, session string
	dose, typed int
}

var oWeekdays = []string{"mon", "tue", "wed", "thu", "fri", "sat", "sun"}

const oDate = "2006-01-02"

// pattern is rule 1: each weekday falls on its one date within seven days.
func (p *oPlan) pattern() (all []oDay) {
	for w := 1; w <= p.weeks; w++ {
		for i := range 7 {
			date := p.starts.AddDate(0, 0, 7*(w-1)+i)
			key := strings.ToLower(date.Weekday().String()[:3])
			for n, s := range p.days[key] {
				if s.only == nil || slices.Contains(s.only, w) {
					all = append(all, oDay{date, date, s.at, s.session, w, n})
				}
			}
		}
	}
	return all
}

func (p *oPlan) isAway(d time.Time) bool {
	for _, r := range p.away {
		if !d.Before(r[0]) && !d.After(r[1]) {
			return true
		}
	}
	return false
}

// schedule is rule 2: moves are read once from the pattern, then days away are
// left out. The days come in order.
func (p *oPlan) schedule() (days, left []oDay) {
	for _, d := range p.pattern() {
		if to, ok := p.move[d.first]; ok {
			d.date = to
		}
		if p.isAway(d.date) {
			left = append(left, d)
		} else {
			days = append(days, d)
		}
	}
	sort.SliceStable(days, func(i, j int) bool {
		a, b := days[i], days[j]
		key := func(d oDay) string {
			return fmt.Sprintf("%s %-5s %s %d", d.date.Format(oDate), d.at, d.first.Format(oDate), d.typed)
		}
		return key(a) < key(b)
	})
	return days, left
}

func (p *oPlan) weekOf(d time.Time) int { return int(d.Sub(p.starts).Hours())/24/7 + 1 }

// n is ⌈k / every⌉, k the weeks from `from` to min(w, until) that are neither
// lighter nor on hold.
func (p *oPlan) n(g oGrow, w int) int64 {
	from, until, every := max(g.from, 0), g.until, max(g.every, 1)
	if from == 0 {
		from = 2
	}
	if until == 0 {
		until = p.weeks
	}
	k := 0
	for x := from; x <= w && x <= until; x++ {
		if p.lighter[x] == 0 && !slices.Contains(p.hold, x) {
			k++
		}
	}
	n := 0
	for n*every < k {
		n++
	}
	return int64(n)
}

// roundHalfUp is the greatest whole number that is not above r + 1/2.
func roundHalfUp(r *big.Rat) *big.Rat {
	x := new(big.Rat).Add(r, big.NewRat(1, 2))
	q := new(big.Int).Div(x.Num(), x.Denom())
	return new(big.Rat).SetInt(q)
}

// grown returns what becomes of v.
func (p *oPlan) grown(g oGrow, v *big.Rat, w int) *big.Rat {
	if g.each != nil {
		from := max(g.from, 1)
		if w < from {
			return v
		}
		return g.each[min(w-from+1, len(g.each))-1]
	}
	n := p.n(g, w)
	if n == 0 {
		return v
	}
	x := new(big.Rat).SetInt64(n)
	x.Mul(x, g.by)
	if g.percent {
		x.Mul(x, big.NewRat(1, 100))
		x.Mul(x, v)
		x.Add(x, v)
		x = roundHalfUp(x)
	} else {
		x.Add(x, v)
	}
	if g.limit != nil && (g.by.Sign() > 0 && x.Cmp(g.limit) > 0 || g.by.Sign() < 0 && x.Cmp(g.limit) < 0) {
		x = g.limit
	}
	least := big.NewRat(1, 1)
	if g.what == "rest" {
		least = new(big.Rat)
	}
	if x.Cmp(least) < 0 {
		x = least
	}
	return x
}

func (s oSession) clone() oSession {
	s.blocks = slices.Clone(s.blocks)
	for i := range s.blocks {
		s.blocks[i].exercises = slices.Clone(s.blocks[i].exercises)
	}
	return s
}

// values calls f with every value of s that the entry reaches; f returns what
// becomes of it.
func (g oGrow) values(s *oSession, f func(v *big.Rat) *big.Rat) (found int) {
	for i := range s.blocks {
		b := &s.blocks[i]
		if g.blocks == nil && b.part != "main" || g.blocks != nil && !slices.Contains(g.blocks, b.title) {
			continue
		}
		switch g.what {
		case "rounds":
			found++
			b.rounds = f(new(big.Rat).SetInt64(b.rounds)).Num().Int64()
		case "rest":
			if b.rest != nil {
				found++
				b.rest = f(b.rest)
			}
		default:
			for j := range b.exercises {
				e := &b.exercises[j]
				if strings.HasPrefix(e.key, g.what) && (g.exercises == nil || slices.Contains(g.exercises, e.name)) {
					found++
					e.v = f(e.v)
				}
			}
		}
	}
	return found
}

// session is rule 3; it returns the session of a week, whether each entry of
// grow changed it, whether it became invalid by one, and whether the lighter
// week changed it.
func (p *oPlan) session(base oSession, w int) (s oSession, changed map[int]bool, culprit int, lighter bool) {
	s, changed, culprit = base.clone(), map[int]bool{}, -1
	bad := false
	for i, g := range p.grow {
		if g.in != base.name {
			continue
		}
		g.values(&s, func(v *big.Rat) *big.Rat {
			x := p.grown(g, v, w)
			if x.Cmp(v) != 0 {
				changed[i] = true
			}
			return x
		})
		was := bad
		bad = slices.ContainsFunc(s.blocks, func(b oBlock) bool { return b.rounds > 1 && b.rest == nil })
		if bad && !was {
			culprit = i
		}
	}
	if !bad {
		culprit = -1
	}
	if keep := p.lighter[w]; keep != 0 {
		lighter = lighten(&s, keep)
	}
	return s, changed, culprit, lighter
}

// lighten is the second half of rule 3.
func lighten(s *oSession, keep int64) (changed bool) {
	for i := range s.blocks {
		b := &s.blocks[i]
		if b.part != "main" {
			continue
		}
		rounds := int64(1)
		for rounds*100 < b.rounds*keep {
			rounds++
		}
		share := big.NewRat(b.rounds*keep, 100*rounds)
		for j := range b.exercises {
			was := b.exercises[j].v
			x := roundHalfUp(new(big.Rat).Mul(was, share))
			if x.Cmp(big.NewRat(1, 1)) < 0 {
				x = big.NewRat(1, 1)
			}
			if x.Cmp(was) > 0 {
				x = was
			}
			b.exercises[j].v = x
			changed = changed || x.Cmp(was) != 0
		}
		changed = changed || rounds != b.rounds
		b.rounds = rounds
	}
	return changed
}

package weeks

import (
	"fmt"
	"math/big"
	"slices"
	"time"

	"coldfloor/sessions"
)

// sessionWeek names a session of one week.
type sessionWeek struct {
	name string
	week int
}

// Session returns the session of a day: the one that the plan names, with what
// grows and what is lighter in the week of its dose. It is valid, it is the
// plan's own and not to be changed, and it has no Source: Plan.Written has
// one.
func (p *Plan) Session(d Planned) *sessions.Session {
	return p.made[sessionWeek{d.Slot.Session, d.Dose}]
}

// Full returns the session of a day as it would be if its week were no lighter
// one; it is what Session returns in every other week.
func (p *Plan) Full(d Planned) *sessions.Session {
	if s := p.full[sessionWeek{d.Slot.Session, d.Dose}]; s != nil {
		return s
	}
	return p.Session(d)
}

// Base returns the session as its own file has it, by the name that the plan
// gives it, or nil.
func (p *Plan) Base(name string) *sessions.Session { return p.bases[name] }

// suffix is what the title of a week's session gets after it.
func suffix(week int) string { return fmt.Sprintf(", week %d", week) }

// clone copies a session as deep as it is changed.
func clone(s *sessions.Session) *sessions.Session {
	c := *s
	c.Source = nil
	c.Blocks = slices.Clone(s.Blocks)
	for i := range c.Blocks {
		c.Blocks[i].Exercises = slices.Clone(c.Blocks[i].Exercises)
	}
	return &c
}

// apply changes every value of s that the entry reaches, and reports whether
// one became another.
func (g *Grow) apply(p *Plan, s *sessions.Session, week int) (changed bool) {
	n := g.steps(p, week)
	for _, t := range g.targets {
		was := g.get(s, t)
		v := g.value(was, week, n)
		g.set(s, t, v)
		changed = changed || v != was
	}
	return changed
}

// steps returns how many times the entry has added by the week: every so many
// of the weeks from From to Until that are neither lighter nor on hold.
func (g *Grow) steps(p *Plan, week int) int64 {
	k := 0
	for w := g.From; w <= min(week, g.Until); w++ {
		if _, lighter := p.IsLighter(w); !lighter && !p.IsHold(w) {
			k++
		}
	}
	return int64((k + g.Every - 1) / g.Every)
}

// value returns what becomes of v in a week in which the entry has added n
// times.
func (g *Grow) value(v int64, week int, n int64) int64 {
	if g.Each != nil {
		if week < g.From {
			return v
		}
		return g.Each[min(week-g.From, len(g.Each)-1)]
	}
	if n == 0 {
		return v
	}
	to := v + n*g.By
	if g.Percent != 0 {
		to = scaled(v, hundred+n*int64(g.Percent), hundred, g.unit())
	}
	if g.Limit != nil && g.beyond(to) {
		to = *g.Limit
	}
	return min(max(to, g.least()), absurd)
}

// absurd is above every value that a session may have, as a number and in
// nanoseconds: what grows beyond it is not counted on.
const absurd = 1 << 50

// beyond reports whether v is past the limit, in the direction of the change.
func (g *Grow) beyond(v int64) bool {
	if g.By < 0 || g.Percent < 0 {
		return v < *g.Limit
	}
	return v > *g.Limit
}

func duration(v int64) time.Duration { return time.Duration(v) }

// unit is what a percentage is rounded to: a rep, a round or a second.
func (g *Grow) unit() int64 {
	if g.What.counted() {
		return 1
	}
	return int64(time.Second)
}

// least is what a value is held to: 1 rep, 1 round, 1 s of work, 0 s of rest.
func (g *Grow) least() int64 {
	if g.What == Rest {
		return 0
	}
	return g.unit()
}

// get reads the value of s that the entry changes.
func (g *Grow) get(s *sessions.Session, t target) int64 {
	b := &s.Blocks[t.block]
	switch g.What {
	case Rounds:
		return int64(b.Rounds)
	case Rest:
		return int64(b.Rest)
	}
	return dose(&b.Exercises[t.exercise]).get()
}

// set writes it. A rest after the block that is not written follows the rest.
func (g *Grow) set(s *sessions.Session, t target, v int64) {
	b := &s.Blocks[t.block]
	switch g.What {
	case Rounds:
		b.Rounds = int(v)
	case Rest:
		b.Rest = duration(v)
		if _, written := b.Marks["rest_after"]; !written {
			b.RestAfter = b.Rest
		}
	default:
		dose(&b.Exercises[t.exercise]).put(v)
	}
}

// scaled returns v × num / den, rounded half up to a whole unit, exactly.
func scaled(v, num, den, unit int64) int64 {
	n := new(big.Int).Mul(big.NewInt(2*v), big.NewInt(num))
	d := new(big.Int).Mul(big.NewInt(den), big.NewInt(unit))
	n.Add(n, d)
	n.Div(n, d.Lsh(d, 1)) // Euclidean: towards minus infinity, for d is above 0
	if n.Mul(n, big.NewInt(unit)); !n.IsInt64() {
		return v
	}
	return n.Int64()
}

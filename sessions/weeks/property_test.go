package weeks_test

import (
	"errors"
	"maps"
	"math/big"
	"slices"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
	"coldfloor/sessions/weeks"
)

// finder gives the sessions of a random plan.
func (p *oPlan) finder(t interface{ Fatalf(string, ...any) }) weeks.Finder {
	return func(name string) (*sessions.Session, error) {
		for _, s := range p.sessions {
			if s.name == name {
				read, err := sessions.Parse(name, []byte(s.String()))
				if err != nil {
					t.Fatalf("%v\n%s", err, s)
				}
				return read, nil
			}
		}
		return nil, errors.New("there is no such session")
	}
}

// TestPlansReadTwice holds random plans, with all that is wrong with them,
// against the slow second reading.
func TestPlansReadTwice(t *testing.T) {
	valid := 0
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlan(t)
		src, growAt, lighterAt, moveAt := p.write()
		want, anywhere := p.problems(growAt, lighterAt, moveAt)
		got, err := weeks.Parse("random.yaml", []byte(src), p.finder(t))
		var problems yamlread.Problems
		if errors.As(err, &problems); err != nil && problems == nil {
			t.Fatalf("%v", err)
		}
		lines := map[int]bool{}
		for _, pr := range problems {
			lines[pr.Pos.Line] = true
		}
		if anywhere {
			if err == nil {
				t.Fatalf("a day with more than four sessions is let through:\n%s", src)
			}
			return
		}
		if slices.ContainsFunc(problems, outOfBounds) {
			return // the second reading knows no bounds: they are tried with sessions of their own
		}
		if !maps.Equal(lines, want) {
			t.Fatalf("problems in lines %v, want %v:\n%v\n%s", slices.Sorted(maps.Keys(lines)), slices.Sorted(maps.Keys(want)), err, src)
		}
		if err == nil {
			valid++
			p.compare(t, got, src)
		}
	})
	if valid < 10 {
		t.Errorf("only %d plans were valid", valid)
	}
}

// outOfBounds reports whether a session has grown beyond what a session may be.
func outOfBounds(p yamlread.Problem) bool {
	return strings.Contains(p.Message, "longer than") || strings.Contains(p.Message, "more than")
}

// problems returns the lines that are wrong, and whether a day has too many
// sessions.
func (p *oPlan) problems(growAt, lighterAt map[int]int, moveAt map[time.Time]int) (lines map[int]bool, anywhere bool) {
	lines = map[int]bool{}
	out := p.unfound() // entries that are wrong by themselves, and have no say in the rest
	p.beyond(out)
	changed, lightened := map[int]bool{}, map[int]bool{}
	for w := p.invalid(out); w > 0; w = p.invalid(out) {
		lightened[w] = true // nobody knows by how much
	}
	kept := p.without(out)
	for _, s := range p.sessions {
		for w := 1; w <= p.weeks; w++ {
			if !p.used(s.name, w) {
				continue
			}
			_, c, _, l := kept.session(s, w)
			for i := range c {
				changed[i] = true
			}
			lightened[w] = lightened[w] || l
		}
	}
	for i := range p.grow {
		if out[i] || !changed[i] {
			lines[growAt[i]] = true
		}
	}
	for w := range p.lighter {
		if !lightened[w] {
			lines[lighterAt[w]] = true
		}
	}
	return lines, p.movedWrongly(moveAt, lines)
}

// used reports whether the pattern has a session in a week.
func (p *oPlan) used(name string, w int) bool {
	return slices.ContainsFunc(p.pattern(), func(d oDay) bool { return d.session == name && d.dose == w })
}

// unfound finds the entries of grow that reach nothing.
func (p *oPlan) unfound() map[int]bool {
	out := map[int]bool{}
	for i, g := range p.grow {
		base := p.sessions[slices.IndexFunc(p.sessions, func(s oSession) bool { return s.name == g.in })]
		copied := base.clone()
		found := g.values(&copied, func(v *big.Rat) *big.Rat { return v })
		named := g.exercises == nil || slices.ContainsFunc(base.blocks, func(b oBlock) bool {
			meant := g.blocks == nil && b.part == "main" || slices.Contains(g.blocks, b.title)
			return meant && slices.ContainsFunc(b.exercises, func(e oExercise) bool { return e.name == g.exercises[0] })
		})
		inDays := false
		for _, slots := range p.days {
			inDays = inDays || slices.ContainsFunc(slots, func(s oSlot) bool { return s.session == g.in })
		}
		if found == 0 || !named || !inDays {
			out[i] = true
		}
	}
	return out
}

// movedWrongly adds the lines of moves that cannot be, and reports whether a
// day has more than four sessions after them.
func (p *oPlan) movedWrongly(moveAt map[time.Time]int, lines map[int]bool) (crowded bool) {
	pattern := p.pattern()
	last := p.starts.AddDate(0, 0, 7*p.weeks-1)
	outside := func(d time.Time) bool { return d.Before(p.starts) || d.After(last) }
	on := map[time.Time]int{}
	for _, d := range pattern {
		if to, ok := p.move[d.first]; ok {
			d.date = to
		}
		on[d.date]++
	}
	for from, to := range p.move {
		holds := slices.ContainsFunc(pattern, func(d oDay) bool { return d.first.Equal(from) })
		if outside(from) || outside(to) || from.Equal(to) || !holds || p.isAway(to) {
			lines[moveAt[from]] = true
		}
	}
	for _, n := range on {
		crowded = crowded || n > 4
	}
	return crowded
}

// without returns the plan with some entries of grow made harmless.
func (p *oPlan) without(out map[int]bool) *oPlan {
	q := *p
	q.grow = slices.Clone(p.grow)
	for i := range out {
		q.grow[i].in = "none"
	}
	return &q
}

// beyond finds the entries whose limit week 1 is beyond already.
func (p *oPlan) beyond(out map[int]bool) {
	for _, base := range p.sessions {
		s := base.clone()
		for i, g := range p.grow {
			if g.in != base.name || out[i] {
				continue
			}
			wrong := false
			probe := s.clone()
			g.values(&probe, func(v *big.Rat) *big.Rat {
				wrong = wrong || g.limit != nil && (g.by.Sign() > 0 && v.Cmp(g.limit) > 0 || g.by.Sign() < 0 && v.Cmp(g.limit) < 0)
				return v
			})
			if wrong {
				out[i] = true
				continue
			}
			g.values(&s, func(v *big.Rat) *big.Rat { return p.grown(g, v, 1) })
		}
	}
}

// invalid finds the next entry that makes rounds without a rest, and returns
// the week in which it does.
func (p *oPlan) invalid(out map[int]bool) (week int) {
	for _, s := range p.sessions {
		for w := 1; w <= p.weeks; w++ {
			if !p.used(s.name, w) {
				continue
			}
			if _, _, culprit, _ := p.without(out).session(s, w); culprit >= 0 {
				out[culprit] = true
				return w
			}
		}
	}
	return 0
}

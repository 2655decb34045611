package weeks

import (
	"fmt"
	"slices"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// sessionNames returns the names of days, each once, in the order of the week.
func (r *reader) sessionNames() []string {
	var names []string
	for _, s := range r.p.Slots {
		if !slices.Contains(names, s.Session) {
			names = append(names, s.Session)
		}
	}
	return names
}

// has reports whether the pattern has the session in the week.
func (p *Plan) has(name string, week int) bool {
	return slices.ContainsFunc(p.Slots, func(s Slot) bool {
		return s.Session == name && (s.Only == nil || slices.Contains(s.Only, week))
	})
}

// judgeSessions makes the session of every week, and notes the entries of grow
// and lighter that are wrong: beyond their limit at once, that change nothing,
// and those that make what is no session.
func (r *reader) judgeSessions() {
	grew, lightened := make([]bool, len(r.p.Grow)), map[int]bool{}
	known := true
	for _, name := range r.sessionNames() {
		if r.p.bases[name] == nil {
			known = false
			continue
		}
		r.judgeFirst(name)
		r.scratch = clone(r.p.bases[name])
		for week := 1; week <= r.p.Count; week++ {
			if r.p.has(name, week) && r.make(name, week, grew) {
				lightened[week] = true
			}
		}
	}
	for i, g := range r.p.Grow {
		if g.ok && !grew[i] {
			r.m.ProblemAt(g.Pos, "this changes nothing in any week", "the weeks from "+fmt.Sprintf("%d to %d", g.From, g.Until)+" that are neither lighter nor on hold, and that have the session, are changed")
		}
	}
	for i, l := range r.p.Lighter {
		if known && l.Week > 0 && l.Keep > 0 && !lightened[l.Week] {
			r.lighter[i].Problem("", fmt.Sprintf("this changes nothing in week %d", l.Week), "only blocks of part main are made lighter, and at least 1 round, 1 rep and 1 s stay")
		}
	}
}

// judgeFirst notes the entries whose limit the session is beyond in week 1.
func (r *reader) judgeFirst(name string) {
	s := clone(r.p.bases[name])
	for i := range r.p.Grow {
		g := &r.p.Grow[i]
		if g.In != name || !g.ok {
			continue
		}
		for _, t := range g.targets {
			if v := g.get(s, t); g.Limit != nil && g.beyond(v) {
				r.grow[i].Problem("limit", fmt.Sprintf("week 1 is beyond this already, with %s", g.write(v)), "change the limit, or take it out")
				g.ok = false
				break
			}
		}
		if g.ok {
			g.apply(r.p, s, 1)
		}
	}
}

// write puts a value into words: 12, or 90s.
func (g *Grow) write(v int64) string {
	if g.What.counted() {
		return fmt.Sprint(v)
	}
	return units.FormatDuration(duration(v))
}

// make makes and keeps the session of a week, or notes the entry that makes
// it none. It marks the entries that change something, and reports whether
// the week is lighter by anything, or may be for all that is known.
func (r *reader) make(name string, week int, grew []bool) (lightened bool) {
	s := r.scratch
	restore(s, r.p.bases[name])
	culprit, wrong := 0, ""
	for i := range r.p.Grow {
		g := &r.p.Grow[i]
		if g.In != name || !g.ok {
			continue
		}
		grew[i] = g.apply(r.p, s, week) || grew[i]
		now := unsound(s)
		if wrong == "" {
			culprit = i
		}
		wrong = now
	}
	if wrong != "" {
		g := &r.p.Grow[culprit]
		r.m.ProblemAt(g.Pos, fmt.Sprintf("in week %d this makes the session invalid: %s", week, wrong), "")
		g.ok = false
		return true
	}
	if keep, ok := r.p.IsLighter(week); ok && keep > 0 {
		r.p.full[sessionWeek{name, week}] = kept(s, name, week, r.p.full)
		lightened = lighten(s, keep)
		if wrong := unsound(s); wrong != "" {
			r.m.ProblemAt(r.p.lighterOf(week).Pos, fmt.Sprintf("this makes %s invalid: %s", quoted(name), wrong), "keep more of it")
			return true
		}
	}
	r.p.made[sessionWeek{name, week}] = kept(s, name, week, r.p.made)
	return lightened
}

// restore makes s, which is a clone, its base again.
func restore(s, base *sessions.Session) {
	for i := range s.Blocks {
		exercises := s.Blocks[i].Exercises
		s.Blocks[i] = base.Blocks[i]
		s.Blocks[i].Exercises = exercises
		copy(exercises, base.Blocks[i].Exercises)
	}
}

// kept returns a copy of a session as that of a week. It has the very blocks of
// an earlier week that has the same ones, so that whoever reads both sees that
// they are.
func kept(s *sessions.Session, name string, week int, earlier map[sessionWeek]*sessions.Session) *sessions.Session {
	var c *sessions.Session
	for w := week - 1; w >= 1 && c == nil; w-- {
		if o := earlier[sessionWeek{name, w}]; o != nil && sameBlocks(o, s) {
			same := *s
			same.Blocks = o.Blocks
			c = &same
		}
	}
	if c == nil {
		c = clone(s)
	}
	c.Title += suffix(week)
	return c
}

// sameBlocks reports whether two sessions made of one file have the same doses.
func sameBlocks(a, b *sessions.Session) bool {
	for i := range a.Blocks {
		x, y := &a.Blocks[i], &b.Blocks[i]
		if x.Rounds != y.Rounds || x.Rest != y.Rest || x.RestAfter != y.RestAfter {
			return false
		}
		for j := range x.Exercises {
			if dose(&x.Exercises[j]).get() != dose(&y.Exercises[j]).get() {
				return false
			}
		}
	}
	return true
}

// unsound says why a session that was changed is no valid one, or nothing.
func unsound(s *sessions.Session) string {
	for i := range s.Blocks {
		b := &s.Blocks[i]
		if _, written := b.Marks["rest"]; b.Rounds > 1 && !written {
			return fmt.Sprintf("block %s has %d rounds and no rest", quoted(b.Title), b.Rounds)
		}
		for j := range b.Exercises {
			e := &b.Exercises[j]
			if e.Reps+e.RepsPerSide > sessions.MaxReps {
				return fmt.Sprintf("%s has more than %d reps", quoted(e.Name), sessions.MaxReps)
			}
			if !e.LastsForACall() {
				return fmt.Sprintf("%s may end before anything is called", quoted(e.Name))
			}
		}
	}
	switch steps, length := sessions.Size(s); {
	case steps > sessions.MaxSteps:
		return fmt.Sprintf("it has more than %d steps", sessions.MaxSteps)
	case length > sessions.MaxLength:
		return "it lasts longer than " + units.FormatDuration(sessions.MaxLength)
	}
	return ""
}

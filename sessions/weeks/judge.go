package weeks

import (
	"fmt"
	"slices"
	"strconv"
	"unicode/utf8"

	"coldfloor/internal/nearest"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// judge finds what the keys of the file are wrong about together.
func (r *reader) judge() {
	for i := range r.p.Grow {
		r.aim(i)
	}
	if r.p.Count > 0 {
		r.judgeSessions()
	}
	if r.dated {
		r.judgeMoves()
		r.p.schedule()
		r.judgeDays()
	}
}

// aim finds what an entry of grow reaches.
func (r *reader) aim(i int) {
	g, m := &r.p.Grow[i], r.grow[i]
	base, named := r.p.bases[g.In]
	if g.In != "" && !named {
		hint := "write a name as in days"
		near := nearest.Word(g.In, r.sessionNames())
		if near != "" {
			hint = "did you mean " + near + "?"
		}
		if near != "" && r.p.bases[near] == nil || near == "" && r.unread { // the mistake is in days, and that was said
			g.ok = false
			return
		}
		m.Problem("in", quoted(g.In)+" is not one of the sessions under days", hint)
	}
	if base == nil || !g.ok {
		g.ok = false
		return
	}
	blocks := r.aimBlocks(g, m, base)
	if !g.ok {
		return
	}
	if g.What == Rounds || g.What == Rest {
		for _, b := range blocks {
			if _, rest := base.Blocks[b].Marks["rest"]; rest || g.What == Rounds {
				g.targets = append(g.targets, target{b, -1})
			}
		}
	} else {
		r.aimExercises(g, m, base, blocks)
	}
	if g.ok && len(g.targets) == 0 {
		m.Problem("", g.nothing(), "see coldfloor preview "+g.In+" for what is in it")
		g.ok = false
	}
}

// nothing says what an entry looks for and does not find.
func (g *Grow) nothing() string {
	what := map[What]string{Reps: "no exercise with reps", Time: "no exercise with a time", Rounds: "no block", Rest: "no block with a rest"}[g.What]
	return fmt.Sprintf("this finds %s in %s", what, quoted(g.In))
}

// aimBlocks returns the indexes of the blocks that an entry means.
func (r *reader) aimBlocks(g *Grow, m *yamlread.Mapping, base *sessions.Session) (found []int) {
	titles := map[string]bool{}
	for i, b := range base.Blocks {
		titles[b.Title] = true
		if g.Blocks == nil && b.Part == sessions.Main || slices.Contains(g.Blocks, b.Title) {
			found = append(found, i)
		}
	}
	r.known(g, m, "block", g.Blocks, titles)
	return found
}

// aimExercises adds the exercises of blocks that an entry means.
func (r *reader) aimExercises(g *Grow, m *yamlread.Mapping, base *sessions.Session, blocks []int) {
	there := map[string]bool{}
	for _, b := range blocks {
		for j := range base.Blocks[b].Exercises {
			e := &base.Blocks[b].Exercises[j]
			there[e.Name] = true
			if dose(e).what == g.What && (g.Exercises == nil || slices.Contains(g.Exercises, e.Name)) {
				g.targets = append(g.targets, target{b, j})
			}
		}
	}
	r.known(g, m, "exercise", g.Exercises, there)
}

// known notes names that a session does not have.
func (r *reader) known(g *Grow, m *yamlread.Mapping, key string, names []string, there map[string]bool) {
	var all []string
	for name := range there {
		all = append(all, name)
	}
	slices.Sort(all)
	for _, n := range names {
		if there[n] {
			continue
		}
		hint := "names are written as in the session"
		if near := nearest.Word(n, all); near != "" {
			hint = "did you mean " + quoted(near) + "?"
		}
		m.Problem(key, fmt.Sprintf("%s has no %s called %s here", quoted(g.In), key, quoted(n)), hint)
		g.ok = false
	}
}

// quoted shows a name of the file within a message.
func quoted(s string) string {
	const most = 40
	if utf8.RuneCountInString(s) > most {
		s = string([]rune(s)[:most]) + "…"
	}
	return strconv.Quote(s)
}

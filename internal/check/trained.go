package check

import (
	"slices"
	"strings"

	"coldfloor/internal/nearest"
	"coldfloor/sessions"
)

// usual are the qualities that a week of speed and power work looks after, and
// the words a coach may use for each.
var usual = []struct {
	name  string
	words []string
}{
	{"vertical power", []string{"vertical", "reactive", "elastic", "jump"}},
	{"horizontal power", []string{"horizontal", "accelerat", "sprint"}},
	{"lateral power", []string{"lateral", "side", "agility", "change of direction"}},
	{"strength", []string{"strength"}},
	{"trunk", []string{"trunk", "core"}},
	{"mobility", []string{"mobility", "flexibility"}},
	{"conditioning", []string{"conditioning", "endurance", "aerobic", "interval"}},
}

// trained tells what the session trains and what it does not, and names the
// qualities that the rules do not know.
func trained(c *checker) {
	var names, unsaid []string
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		if b.Part == sessions.Main && len(b.Trains) == 0 {
			unsaid = append(unsaid, b.Title)
		}
		for _, name := range b.Trains {
			if !slices.Contains(names, name) {
				names = append(names, name)
			}
			if b.Part == sessions.Main && qualityOf(name) == unknown {
				c.unknownQuality(b, name)
			}
		}
	}
	at := c.s.Marks.At("blocks")
	if len(unsaid) > 0 {
		c.add(Note, at, nil, "what %s trains is not said, and is judged by the names and doses of its exercises", list(unsaid, maxNames))
	}
	if len(names) > 0 {
		text := "trained: " + list(names, maxNames)
		if missing := notTrained(names); len(missing) > 0 {
			text += "; not trained: " + strings.Join(missing, ", ")
		}
		c.add(Note, at, figures{"trained": names}, "%s", text)
	}
}

// unknownQuality notes a quality that the rules do not know.
func (c *checker) unknownQuality(b *sessions.Block, name string) {
	c.add(Note, b.Marks.At("trains"), nil, "%s is not a quality known here, and has no range of rest", quote(name))
	hint := "known are power, speed, strength, muscle size, endurance, conditioning, trunk, mobility and the like"
	if near := nearest.Word(name, qualityNames); near != "" {
		hint = "did you mean " + near + "?"
	}
	c.found[len(c.found)-1].Hint = hint
}

// notTrained returns the usual qualities that are not among the names.
func notTrained(names []string) []string {
	all := strings.ToLower(strings.Join(names, "\n"))
	var missing []string
	for _, u := range usual {
		if !slices.ContainsFunc(u.words, func(w string) bool { return strings.Contains(all, w) }) {
			missing = append(missing, u.name)
		}
	}
	return missing
}

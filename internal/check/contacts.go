package check

import (
	"fmt"
	"strings"

	"coldfloor/internal/jumps"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// contacts holds the session's foot contacts against the range of its level,
// block by block, and names the jumps whose contacts are not written.
func contacts(c *checker) {
	c.unwritten()
	n, all := c.p.Contacts, jumps.AllCounted(c.s.Blocks...)
	if n == 0 {
		return
	}
	f := figures{"contacts": n, "at_least": !all}
	for i, b := range c.p.Blocks {
		f[fmt.Sprintf("block_%d_contacts", i+1)] = b.Contacts
	}
	level, at := c.level(), c.s.Marks.At("level")
	if level == "" {
		severity := Note
		if float64(n) > c.limit("contacts_"+string(sessions.Advanced)).High {
			severity = Warning
		}
		c.add(severity, at, f, "%s; no level is given to hold them against, the range of an advanced player is %s a session",
			c.contactsByBlock(all), c.cite("contacts_"+string(sessions.Advanced)))
		return
	}
	key := "contacts_" + string(level)
	r := c.limit(key)
	f["low"], f["high"] = r.Low, r.High
	severity, where := Note, "within"
	switch v := float64(n); {
	case v > r.High:
		severity, where = Warning, "above"
	case !all:
		where = "and jumps that are not counted;"
	case v < r.Low:
		where = "below"
	}
	whose := ""
	if c.s.Level == "" {
		whose = " of the player"
	}
	c.add(severity, at, f, "%s, %s the range of one session at level %s%s, %s", c.contactsByBlock(all), where, level, whose, c.cite(key))
}

// hasJumps reports whether the session has a jump, counted or not, outside
// what only prepares.
func (c *checker) hasJumps() bool {
	for _, s := range c.sets {
		if s.Contacts > 0 || s.jump && !s.prepares {
			return true
		}
	}
	return false
}

// contactsByBlock writes the foot contacts of the session and of each block
// that has some.
func (c *checker) contactsByBlock(all bool) string {
	var parts []string
	for _, b := range c.p.Blocks {
		if b.Contacts > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", quote(b.Title), b.Contacts))
		}
	}
	text := fmt.Sprintf("%s (%s)", units.Count(c.p.Contacts, "foot contact"), strings.Join(parts, ", "))
	if !all {
		return "at least " + text
	}
	return text
}

// unwritten warns of jumps with reps whose contacts are not written.
func (c *checker) unwritten() {
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if timed(e) || e.ContactsWritten() || !jumps.Is(e) {
			return
		}
		why := "by its name"
		if e.Overhead.Kind == sessions.OverheadJump {
			why = "by its overhead"
		}
		c.add(Warning, e.Marks.At("name"), nil, "%s is a jump %s, and its foot contacts are not written: no count has them", quote(e.Name), why)
		c.found[len(c.found)-1].Hint = "write contacts: 1 if the feet land once a rep, or contacts: 0 if they never do"
	})
}

// timedContacts says how many sets of jumps there are whose contacts cannot be
// counted, because they are dosed by time.
func timedContacts(c *checker) {
	var l listed
	sets := 0
	for _, s := range c.sets {
		if s.jump && timed(s.exercise) && !jumps.Counted(s.exercise) {
			sets++
			l.add(s.exercise, "contacts")
		}
	}
	if sets == 0 {
		return
	}
	c.add(Note, l.at, figures{"exercises": l.names, "sets": sets},
		"%s of jumps by time, %s: how often the feet land is not known, so their contacts are in no count; give reps if they are to count",
		units.Count(sets, "set"), list(l.names, maxNames))
}

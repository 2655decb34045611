package check

import (
	"fmt"
	"strings"

	"coldfloor/internal/jumps"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// contacts holds the session's foot contacts against the range of its level,
// block by block, and names the jumps whose contacts are not given.
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
		c.say(severity, at, f, c.w.ContactsNoLevel(c.contactsByBlock(all), c.cite("contacts_"+string(sessions.Advanced))))
		return
	}
	key := "contacts_" + string(level)
	r := c.limit(key)
	f["low"], f["high"] = r.Low, r.High
	severity, where := Note, c.w.Within
	switch v := float64(n); {
	case v > r.High:
		severity, where = Warning, c.w.Above
	case !all:
		where = c.w.Uncounted
	case v < r.Low:
		where = c.w.Below
	}
	whose := ""
	if c.s.Level == "" {
		whose = c.w.OfThePlayer
	}
	c.say(severity, at, f, c.w.ContactsOfRange(c.contactsByBlock(all), where, c.levelName(level), whose, c.cite(key)))
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
			parts = append(parts, fmt.Sprintf("%s %d", c.name(b.Title), b.Contacts))
		}
	}
	return c.w.Contacts(c.p.Contacts, !all, strings.Join(parts, ", "))
}

// unwritten warns of jumps with reps whose contacts are not given.
func (c *checker) unwritten() {
	c.exercises(func(b *sessions.Block, e *sessions.Exercise) {
		if timed(e) || e.ContactsWritten() || !jumps.Is(e) {
			return
		}
		c.say(Warning, e.Marks.At("name"), nil, c.w.NotWritten(c.name(e.Name), e.Overhead.Kind != sessions.OverheadJump))
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

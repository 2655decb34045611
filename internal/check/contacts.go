package check

import (
	"fmt"
	"strings"

	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// contacts holds the session's foot contacts against the range of its level,
// block by block.
func contacts(c *checker) {
	n := c.p.Contacts
	if n == 0 {
		return
	}
	f := figures{"contacts": n}
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
			c.contactsByBlock(), c.cite("contacts_"+string(sessions.Advanced)))
		return
	}
	key := "contacts_" + string(level)
	r := c.limit(key)
	f["low"], f["high"] = r.Low, r.High
	severity, where := Note, "within"
	switch v := float64(n); {
	case v > r.High:
		severity, where = Warning, "above"
	case v < r.Low:
		where = "below"
	}
	c.add(severity, at, f, "%s, %s the range of one session at level %s, %s", c.contactsByBlock(), where, level, c.cite(key))
}

// contactsByBlock writes the foot contacts of the session and of each block
// that has some.
func (c *checker) contactsByBlock() string {
	var parts []string
	for _, b := range c.p.Blocks {
		if b.Contacts > 0 {
			parts = append(parts, fmt.Sprintf("%s %d", quote(b.Title), b.Contacts))
		}
	}
	return fmt.Sprintf("%s (%s)", units.Count(c.p.Contacts, "foot contact"), strings.Join(parts, ", "))
}

// timedContacts tells of contacts that are given and cannot be counted.
func timedContacts(c *checker) {
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if e.Contacts > 0 && (e.Time > 0 || e.TimePerSide > 0) {
			c.add(Note, e.Marks.At("contacts"), nil,
				"the contacts of %s are not counted: timed work has no reps; give reps if they are to count", quote(e.Name))
		}
	})
}

// Package check holds a plan against published and customary ranges, the
// player's settings and the room, before anybody trains by it. It asks no
// clock and reads no file: the same plan and options give the same findings.
package check

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/units"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// Severity is how much a finding weighs.
type Severity string

// The severities.
const (
	Error   Severity = "error"   // the session cannot be done as it is written
	Warning Severity = "warning" // outside what handbook and practice both allow
	Note    Severity = "note"    // worth knowing; the session stands as it is
)

// Finding is one thing that a rule found.
type Finding struct {
	Rule     string         // its name
	Severity Severity       //
	Pos      yamlread.Pos   // of the key that causes it
	Message  string         // one line, safe to show
	Hint     string         // how to mend it, where the message does not say
	Figures  map[string]any // what the message rests on; units in the names: _s, _m, _pct
}

// Options is what a session is held against beside the published ranges.
type Options struct {
	Player settings.Player
	Room   settings.Room // goes before that of the settings; zero: the settings' own
	Within time.Duration // how long the session may be; 0: not asked
	Jumps  []time.Time   // ends of the player's earlier sessions with foot contacts, in any order
	Now    time.Time
}

// Run returns what the rules find in the plan, in the order of the file, but
// for the rules that the settings turn off.
func Run(p *plan.Plan, o Options) []Finding {
	if o.Room == (settings.Room{}) {
		o.Room = o.Player.Room
	}
	c := &checker{p: p, s: p.Session, o: o}
	c.sets = setsOf(p)
	for _, r := range rules {
		if !slices.Contains(o.Player.Off, r.Name) {
			c.rule = r.Name
			r.run(c)
		}
	}
	slices.SortStableFunc(c.found, func(a, b Finding) int {
		return cmp.Or(cmp.Compare(a.Pos.Line, b.Pos.Line), cmp.Compare(a.Pos.Column, b.Pos.Column))
	})
	return c.found
}

// Sound reports whether there is no error and no warning among the findings.
func Sound(findings []Finding) bool {
	return !slices.ContainsFunc(findings, func(f Finding) bool { return f.Severity != Note })
}

// checker is one run of the rules.
type checker struct {
	p     *plan.Plan
	s     *sessions.Session
	o     Options
	sets  []set
	rule  string // at work
	found []Finding
}

// figures is what a finding rests on.
type figures map[string]any

// add notes a finding of the rule at work.
func (c *checker) add(s Severity, at yamlread.Pos, f figures, format string, args ...any) {
	c.found = append(c.found, Finding{Rule: c.rule, Severity: s, Pos: at, Message: fmt.Sprintf(format, args...), Figures: f})
}

// limit returns the range that applies.
func (c *checker) limit(key string) settings.Range { return c.o.Player.Limits[key] }

// cite writes the range that applies and whose it is: "80–100 (NSCA
// Essentials, from memory)".
func (c *checker) cite(key string) string {
	return c.span(key) + " (" + c.source(key) + ")"
}

// source names whose the range is.
func (c *checker) source(key string) string {
	if c.o.Player.Limits.Changed(key) {
		return "your own limit"
	}
	return settings.LimitByKey(key).Source
}

// span writes the range that applies: "80–100", "5s–10s".
func (c *checker) span(key string) string {
	return strings.ReplaceAll(settings.LimitByKey(key).Format(c.limit(key)), "-", "–")
}

// ratio writes a range of rest to work: "1:5 to 1:10".
func (c *checker) ratio(key string) string {
	r := c.limit(key)
	return fmt.Sprintf("1:%g to 1:%g", r.Low, r.High)
}

// level returns whom the session is for: as it says, or else the player.
func (c *checker) level() sessions.Level { return cmp.Or(c.s.Level, c.o.Player.Level) }

// set is a set of the plan with what it belongs to.
type set struct {
	plan.Set
	block      *sessions.Block
	exercise   *sessions.Exercise
	start, end time.Duration // from the first work step to the last
	longest    time.Duration // of its work steps
	before     time.Duration // since the end of the work before; 0 for the first set
	traits     trait
}

// setsOf returns the sets of a plan in order.
func setsOf(p *plan.Plan) []set {
	sets := make([]set, len(p.Sets))
	for i, s := range p.Sets {
		b := &p.Session.Blocks[s.Block-1]
		e := &b.Exercises[s.Exercise-1]
		sets[i] = set{Set: s, block: b, exercise: e, start: p.Steps[s.First].Start, end: p.Steps[s.Last].End(), traits: traitsOf(b, e)}
		for _, step := range p.Steps[s.First : s.Last+1] {
			if step.Kind == plan.Work {
				sets[i].longest = max(sets[i].longest, step.Length)
			}
		}
		if i > 0 {
			sets[i].before = sets[i].start - sets[i-1].end
		}
	}
	return sets
}

// setsIn returns the sets of a block, which counts from 1.
func (c *checker) setsIn(block int) []set {
	first, _ := slices.BinarySearchFunc(c.sets, block, func(s set, b int) int { return cmp.Compare(s.Block, b) })
	last, _ := slices.BinarySearchFunc(c.sets, block+1, func(s set, b int) int { return cmp.Compare(s.Block, b) })
	return c.sets[first:last]
}

// exercises calls f with every exercise of the session and its block.
func (c *checker) exercises(f func(b *sessions.Block, e *sessions.Exercise)) {
	for i := range c.s.Blocks {
		b := &c.s.Blocks[i]
		for j := range b.Exercises {
			f(b, &b.Exercises[j])
		}
	}
}

// quote names something of the file within a message.
func quote(text string) string {
	const most = 48 // cells
	return `"` + safetext.Fit(text, most) + `"`
}

// maxNames is how many names a message holds before it only counts.
const maxNames = 12

// list names some things of the file within a message, at most so many by
// name.
func list(names []string, most int) string {
	names = slices.Compact(slices.Clone(names))
	more := ""
	if len(names) > most {
		more = fmt.Sprintf(" and %d more", len(names)-most)
		names = names[:most]
	}
	quoted := make([]string, len(names))
	for i, n := range names {
		quoted[i] = quote(n)
	}
	return strings.Join(quoted, ", ") + more
}

// span writes a duration as a coach types it, to a tenth of a second.
func span(d time.Duration) string { return units.FormatDuration(d.Round(100 * time.Millisecond)) }

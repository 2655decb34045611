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
	"coldfloor/internal/text"
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
	Hint     string         // how to mend it, if the message does not say
	Figures  map[string]any // what the message rests on; units in the names: _s, _m, _pct
}

// Options is what a session is held against beside the published ranges.
type Options struct {
	Player settings.Player
	Room   settings.Room // goes before that of the settings; zero: the settings' own
	Within time.Duration // how long the session may be; 0: not asked
	Jumps  []Jumped      // the player's earlier sessions with jumps, in any order
	Now    time.Time

	// Language is that of the errors and warnings, and of what is said of the last
	// jumps; nil: English. Notes are a coach's, and English.
	Language *text.Language
}

// Run returns what the rules find in the plan, in the order of the file, but
// for the rules that the settings turn off.
func Run(p *plan.Plan, o Options) []Finding {
	if o.Room == (settings.Room{}) {
		o.Room = o.Player.Room
	}
	if o.Language == nil {
		o.Language = &text.English
	}
	c := &checker{p: p, s: p.Session, o: o, w: &o.Language.Findings}
	c.learn()
	c.sets = c.setsOf(p)
	for _, r := range rules {
		if r.run != nil && !slices.Contains(o.Player.Off, r.Name) {
			c.rule = r.Name
			r.run(c)
		}
	}
	c.onceForPractice()
	sortFindings(c.found)
	return c.found
}

// onceForPractice drops what is found of practice tries and word for word of
// the tries that count too: who mends the one mends the other.
func (c *checker) onceForPractice() {
	practice := map[yamlread.Pos]bool{}
	c.exercises(func(_ *sessions.Block, e *sessions.Exercise) {
		if e.Tries == sessions.Practice {
			for _, at := range e.Marks {
				practice[at] = true
			}
		}
	})
	counted := map[[2]string]bool{}
	for _, f := range c.found {
		if !practice[f.Pos] {
			counted[[2]string{f.Rule, f.Message}] = true
		}
	}
	c.found = slices.DeleteFunc(c.found, func(f Finding) bool { return practice[f.Pos] && counted[[2]string{f.Rule, f.Message}] })
}

// Sound reports whether there is no error and no warning among the findings.
func Sound(findings []Finding) bool {
	return !slices.ContainsFunc(findings, func(f Finding) bool { return f.Severity != Note })
}

// checker is one run of the rules.
type checker struct {
	p        *plan.Plan
	s        *sessions.Session
	o        Options
	sets     []set
	exercise map[*sessions.Exercise]known
	prepares []bool // whether each block only prepares or winds down
	rule     string // at work
	w        *text.Findings
	found    []Finding
}

// figures is what a finding rests on.
type figures map[string]any

// add notes a finding of the rule at work.
func (c *checker) add(s Severity, at yamlread.Pos, f figures, format string, args ...any) {
	c.found = append(c.found, Finding{Rule: c.rule, Severity: s, Pos: at, Message: fmt.Sprintf(format, args...), Figures: f})
}

// say notes a finding of the rule at work, in a sentence that is made.
func (c *checker) say(s Severity, at yamlread.Pos, f figures, sentence string) {
	c.found = append(c.found, Finding{Rule: c.rule, Severity: s, Pos: at, Message: sentence, Figures: f})
}

// name names something of the session within a sentence, as its player does.
func (c *checker) name(text string) string {
	return c.w.Quote(safetext.Fit(c.o.Language.Name(text), mostCells))
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
		return c.w.OwnLimit
	}
	return c.w.Source(settings.LimitByKey(key).Source)
}

// span writes the range that applies: "80–100", "5–10 s".
func (c *checker) span(key string) string {
	r, d := c.limit(key), settings.LimitByKey(key)
	if d.Unit == settings.Time {
		return units.SentenceRange(units.Seconds(r.Low), units.Seconds(r.High))
	}
	return strings.ReplaceAll(d.Format(r), "-", "–")
}

// ratio writes a range of rest to work: "1:5 to 1:10".
func (c *checker) ratio(key string) string {
	r := c.limit(key)
	return fmt.Sprintf("1:%g to 1:%g", r.Low, r.High)
}

// level returns whom the session is for: as it says, or else the player.
func (c *checker) level() sessions.Level { return cmp.Or(c.s.Level, c.o.Player.Level) }

// mostCells is how wide a name of the file is within a message, in cells.
const mostCells = 48

// quote names something of the file within a note.
func quote(text string) string { return `"` + safetext.Fit(text, mostCells) + `"` }

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

// span writes a length of time as a sentence has it.
func span(d time.Duration) string { return units.Sentence(d) }

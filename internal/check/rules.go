package check

import (
	"fmt"
	"io"
	"strings"

	"coldfloor/internal/nearest"
	"coldfloor/internal/safetext"
	"coldfloor/internal/settings"
	"coldfloor/internal/yamlread"
)

// Rule is one thing that sessions are held against.
type Rule struct {
	Name    string   // in brackets behind its findings, and under off in the settings
	Title   string   // what it looks at
	Reason  string   // why, and how it is computed
	Sources []string // published or not, each with how sure it is
	Limits  []string // keys of the settings that change it

	run      func(*checker)      // over a session; nil: it looks at plans of weeks
	runWeeks func(*weeksChecker) // over a plan of weeks; nil: it looks at sessions
}

// ProblemRule is the name that stands behind what is wrong with a file itself,
// which no rule found and nobody can turn off.
const ProblemRule = "file"

// Names returns the names of the rules.
func Names() []string {
	names := make([]string, len(rules))
	for i, r := range rules {
		names[i] = r.Name
	}
	return names
}

// Find returns the rule of that name.
func Find(name string) (r Rule, ok bool) {
	for _, r := range rules {
		if r.Name == name {
			return r, true
		}
	}
	return Rule{}, false
}

// Off returns what is wrong with the rules that the settings turn off: names
// that no rule has.
func Off(s settings.Player) error {
	var problems yamlread.Problems
	for _, name := range s.Off {
		if _, ok := Find(name); ok {
			continue
		}
		p := yamlread.Problem{File: s.File, Pos: s.Marks.At("off"), Message: fmt.Sprintf("no rule is called %s", quote(name)),
			Hint: "the rules are " + strings.Join(Names(), ", ")}
		if near := nearest.Word(name, Names()); near != "" {
			p.Hint = "did you mean " + near + "?"
		}
		problems = append(problems, p)
	}
	if problems == nil {
		return nil
	}
	return problems
}

// Explain writes why the rule is there, whose figures it goes by and how sure
// they are, and how to change its limits, which are those of the settings.
func (r Rule) Explain(w io.Writer, s settings.Player) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n\n%s\nSources\n", r.Name, r.Title, wrap("", r.Reason))
	for _, text := range r.Sources {
		b.WriteString(wrap("  ", text))
	}
	if len(r.Limits) > 0 {
		b.WriteString("\nLimits, as they are under limits: in the settings file\n")
	}
	for _, key := range r.Limits {
		d := settings.LimitByKey(key)
		whose := d.Source
		if s.Limits.Changed(key) {
			whose = "your own; " + d.Format(d.Default) + " is " + d.Source
		}
		fmt.Fprintf(&b, "  %s: %s\n%s", key, d.Format(s.Limits[key]), wrap("    # ", d.Meaning+" ("+whose+")"))
	}
	fmt.Fprintf(&b, "\nTo do without the rule, write off: [%s] in the settings file.\nNone of this is medical advice.\n", r.Name)
	_, err := io.WriteString(w, b.String())
	return err
}

// wrap breaks a text into lines that all begin alike.
func wrap(begin, text string) string {
	const width, most = 78, 100
	var b strings.Builder
	for _, line := range safetext.Wrap(text, width-len(begin), most) {
		b.WriteString(begin + line + "\n")
	}
	return b.String()
}

package check

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/plan"
	"coldfloor/sessions"
)

// example is a session of the corpus and what is said of it.
type example struct {
	source string
	wants  []string // after "#: "
	level  string
}

func parseExample(text string) example {
	var e example
	for line := range strings.Lines(text) {
		want, ok := strings.CutPrefix(line, "#: ")
		switch want = strings.TrimSpace(want); {
		case !ok:
			e.source += "  " + line
		case strings.HasPrefix(want, "level "):
			e.level = "level: " + strings.TrimPrefix(want, "level ") + "\n"
		default:
			e.wants = append(e.wants, want)
		}
	}
	return e
}

// TestCorpus holds sessions as coaches write them to what check says of each:
// good practice raises no alarm, and what is wrong is found.
func TestCorpus(t *testing.T) {
	a, err := txtar.ParseFile("testdata/corpus.txtar")
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Files) < 40 {
		t.Errorf("only %d sessions", len(a.Files))
	}
	for _, f := range a.Files {
		t.Run(f.Name, func(t *testing.T) {
			e := parseExample(string(f.Data))
			s, err := sessions.Parse(f.Name, []byte("coldfloor: 1\ntitle: T\n"+e.level+"blocks:\n"+e.source))
			if err != nil {
				t.Fatal(err)
			}
			o := options()
			for _, want := range e.wants {
				if who, ok := strings.CutPrefix(want, "player "); ok {
					level, age, _ := strings.Cut(who, " ")
					years, _ := strconv.Atoi(age)
					o.Player.Level, o.Player.BirthYear = sessions.Level(level), today.Year()-years
				}
			}
			found := Run(plan.Of(s), o)
			e.hold(t, found)
		})
	}
}

// hold compares the findings with what the example says of them.
func (e example) hold(t *testing.T, found []Finding) {
	t.Helper()
	dose := []string{"rest", "effort", "order", "warm-up"}
	var said []string
	for _, want := range e.wants {
		if want == "silent" || want == "no warning" || strings.HasPrefix(want, "player ") {
			continue
		}
		said = append(said, want)
		if !slices.ContainsFunc(found, func(f Finding) bool { return matches(f, want) }) {
			t.Errorf("not found: %s", want)
		}
	}
	for _, f := range found {
		known := slices.ContainsFunc(said, func(want string) bool { return matches(f, want) })
		switch {
		case known, f.Severity == Note && !(slices.Contains(e.wants, "silent") && slices.Contains(dose, f.Rule)):
		default:
			t.Errorf("line %d: %s: %s [%s]", f.Pos.Line, f.Severity, f.Message, f.Rule)
		}
	}
}

// matches reports whether a finding is the one that is wanted: "severity
// [rule] part of the message", or of the hint.
func matches(f Finding, want string) bool {
	head, part, _ := strings.Cut(want, "] ")
	if head != string(f.Severity)+" ["+f.Rule {
		return false
	}
	if hint, ok := strings.CutPrefix(part, "hint: "); ok {
		return f.Hint == hint
	}
	return strings.Contains(f.Message, part)
}

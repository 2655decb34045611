package check

import (
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"

	"coldfloor/internal/plan"
	"coldfloor/internal/settings"
	"coldfloor/internal/text"
	"coldfloor/internal/text/texttest"
	"coldfloor/internal/units"
	"coldfloor/sessions"
)

// TestLanguage: what a player is shown of a check has no word that is not the
// language's, the session's or a source's. The corpus and a room in which
// nothing fits bring up every rule that warns.
func TestLanguage(t *testing.T) {
	l := texttest.Marked()
	l.Findings.Estimated = func(string) string { return "" } // why is said in English alone
	known := []string{""}
	for key := range settings.Default().Limits {
		known = append(known, settings.LimitByKey(key).Source)
	}
	o := options()
	o.Language = l
	o.Player.Level, o.Player.BirthYear = sessions.Beginner, today.Year()-12
	o.Room = settings.Room{Along: units.Metre / 2, Across: units.Metre / 2, Ceiling: units.Metre}
	for i := range 4 {
		o.Jumps = append(o.Jumps, Jumped{End: today.Add(-time.Duration(20+24*i) * time.Hour), Contacts: 40, Unknown: i == 1})
	}
	a, err := txtar.ParseFile("testdata/corpus.txtar")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, f := range a.Files {
		e := parseExample(string(f.Data))
		source := "coldfloor: 1\ntitle: T\n" + e.level + "blocks:\n" + strings.ReplaceAll(e.source, "name: March,", "name: March, floor: 1m x 1m,")
		s, err := sessions.Parse(f.Name, []byte(source))
		if err != nil {
			t.Fatal(err)
		}
		known[0] = source
		for _, found := range Run(plan.Of(s), o) {
			if found.Severity == Note && found.Rule != Spacing {
				continue
			}
			seen[found.Rule] = true
			if words := texttest.Unmarked(found.Message, known...); len(words) > 0 {
				t.Errorf("%s, %s: %v in %s", f.Name, found.Rule, words, found.Message)
			}
		}
	}
	for _, rule := range []string{"contacts", "rest", "effort", "warm-up", "order", "sides", "spacing", "floor", "ceiling", "travel", "level"} {
		if !seen[rule] {
			t.Errorf("nothing was found by %s", rule)
		}
	}
}

// TestSourcesInGerman: how sure a source is, is said in German too.
func TestSourcesInGerman(t *testing.T) {
	for key := range settings.Default().Limits {
		said := text.German.Findings.Source(settings.LimitByKey(key).Source)
		for _, english := range []string{"memory", "second-hand", "practice", "source", "least"} {
			if strings.Contains(said, english) {
				t.Errorf("%s: %s", key, said)
			}
		}
	}
}

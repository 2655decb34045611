package check

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"coldfloor/internal/settings"
	"coldfloor/internal/yamlread"
	"coldfloor/sessions"
)

// sample is the findings of a session with an error, a warning and notes, and
// of a file that is no session.
func sample(t testing.TB) []FileFindings {
	t.Helper()
	o := options()
	o.Room = settings.Room{Along: 2000, Across: 1000}
	p := read(t, "beginner", jumpBlock(5, 25, "10s")+"      - {name: Long, reps: 2, floor: 3m x 1m}\n")
	_, err := sessions.Parse("bad.yaml", []byte("coldfloor: 1\ntitel: Bad\nblocks: []\n"))
	var problems yamlread.Problems
	if !errors.As(err, &problems) {
		t.Fatal(err)
	}
	return []FileFindings{{"ein kleiner/plan.yaml", Run(p, o)}, {"bad.yaml", OfProblems(problems)}}
}

func TestWriteText(t *testing.T) {
	var b strings.Builder
	if err := WriteText(&b, sample(t)); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"ein kleiner/plan.yaml:3:1: warning: 125 foot contacts (\"Up\" 125), above the range",
		"plan.yaml:11:31: error: \"Long\" needs a floor of 3 × 1 m, but the room has 2 × 1 m [floor]\n",
		"bad.yaml:2:1: error: unknown key \"titel\" [file]\nhint: did you mean title?\n",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}

func TestWriteJSON(t *testing.T) {
	files := sample(t)
	var b bytes.Buffer
	if err := WriteJSON(&b, files); err != nil {
		t.Fatal(err)
	}
	var list []jsonFinding
	if err := json.Unmarshal(b.Bytes(), &list); err != nil {
		t.Fatal(err)
	}
	if len(list) != len(files[0].Findings)+len(files[1].Findings) {
		t.Errorf("%d findings", len(list))
	}
	for _, f := range list {
		if f.Rule == "contacts" && f.Figures["contacts"] != 125.0 {
			t.Errorf("figures %v", f.Figures)
		}
	}
	b.Reset()
	if err := WriteJSON(&b, nil); err != nil || b.String() != "[]\n" {
		t.Errorf("no findings give %q, %v", b.String(), err)
	}
}

// The log is held against the schema of the standard (OASIS, Static Analysis
// Results Interchange Format Version 2.1.0, sarif-schema-2.1.0.json).
func TestWriteSARIF(t *testing.T) {
	schema, err := jsonschema.NewCompiler().Compile("testdata/sarif-schema-2.1.0.json")
	if err != nil {
		t.Fatal(err)
	}
	files := sample(t)
	for _, some := range [][]FileFindings{files, files[:1], {{"/abs/a b.yaml", nil}}, nil} {
		var b bytes.Buffer
		if err := WriteSARIF(&b, some); err != nil {
			t.Fatal(err)
		}
		log, err := jsonschema.UnmarshalJSON(&b)
		if err == nil {
			err = schema.Validate(log)
		}
		if err != nil {
			t.Error(err)
		}
	}
	var b bytes.Buffer
	if err := WriteSARIF(&b, files); err != nil {
		t.Fatal(err)
	}
	var log struct {
		Version string
		Runs    []struct {
			Tool struct {
				Driver struct{ Rules []struct{ ID string } }
			}
			Results []struct {
				RuleID    string
				RuleIndex int
				Level     string
				Locations []struct {
					PhysicalLocation struct {
						ArtifactLocation struct{ URI string }
						Region           struct{ StartLine, StartColumn int }
					}
				}
			}
		}
	}
	if err := json.Unmarshal(b.Bytes(), &log); err != nil {
		t.Fatal(err)
	}
	if log.Version != "2.1.0" || len(log.Runs) != 1 {
		t.Fatalf("%+v", log)
	}
	all := append(append([]Finding{}, files[0].Findings...), files[1].Findings...)
	run := log.Runs[0]
	if len(run.Results) != len(all) {
		t.Fatalf("%d results, want %d", len(run.Results), len(all))
	}
	for i, r := range run.Results {
		f, at := all[i], r.Locations[0].PhysicalLocation
		if r.RuleID != f.Rule || run.Tool.Driver.Rules[r.RuleIndex].ID != f.Rule || r.Level != string(f.Severity) ||
			at.Region.StartLine != f.Pos.Line || at.Region.StartColumn != f.Pos.Column {
			t.Errorf("%+v is not %+v", r, f)
		}
	}
	if got := run.Results[0].Locations[0].PhysicalLocation.ArtifactLocation.URI; got != "ein%20kleiner/plan.yaml" {
		t.Errorf("URI %q", got)
	}
}

// Every rule says why it is there and on whose word, and names limits that
// there are.
func TestRulesAreExplained(t *testing.T) {
	seen := map[string]bool{}
	used := map[string]bool{}
	s := settings.Default()
	s.Limits["warm_up"] = settings.Range{Low: 480, High: 480}
	for _, r := range rules {
		if seen[r.Name] || r.Title == "" || r.Reason == "" || len(r.Sources) == 0 || (r.run == nil) == (r.runWeeks == nil) {
			t.Errorf("%s is not whole", r.Name)
		}
		seen[r.Name] = true
		var b strings.Builder
		if err := r.Explain(&b, s); err != nil {
			t.Fatal(err)
		}
		for _, key := range r.Limits {
			used[key] = true
			if !strings.Contains(b.String(), "  "+key+": ") {
				t.Errorf("%s is not explained:\n%s", key, b.String())
			}
		}
		if r.Name == "warm-up" && !strings.Contains(b.String(), "5min-10min is common practice") {
			t.Errorf("%s", b.String())
		}
		for line := range strings.Lines(b.String()) {
			if len([]rune(line)) > 90 {
				t.Errorf("too long: %q", line)
			}
		}
	}
	for _, d := range settings.AllLimits {
		if !used[d.Key] && !strings.HasPrefix(d.Key, "next_") { // those are of what to do next week
			t.Errorf("no rule goes by the limit %s", d.Key)
		}
	}
}

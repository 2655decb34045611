package schema_test

import (
	"bytes"
	"encoding/json"
	"maps"
	"path/filepath"
	"strings"
	"testing"

	"coldfloor/sessions/schema"
	"coldfloor/sessions/weeks"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

// beyondWeeks are the files of invalid.txtar that the reader refuses and no
// schema can, each with the reason.
var beyondWeeks = map[string]string{
	"no-such-date":                 "February has no length in a schema",
	"late":                         "dates cannot be added",
	"weekday-twice":                "a mapping that was read has each key once",
	"sessions":                     "what a name stands for is not in the file",
	"five-a-day":                   "days cannot be counted",
	"five-by-moving":               "days cannot be counted",
	"days-name":                    "what a name stands for is not in the file",
	"grow-names":                   "what a name stands for is not in the file",
	"grow-beyond":                  "the session is not in the file",
	"grow-nothing":                 "the session is not in the file",
	"grow-nothing-in-its-weeks":    "the session is not in the file",
	"grow-invalid":                 "the session is not in the file",
	"lighter-nothing":              "the session is not in the file",
	"one-session-of-many-is-wrong": "the session is not in the file",
}

func TestWeeksSchemaAndReaderAgree(t *testing.T) {
	s := compileWeeks(t)
	for _, f := range weeksArchive(t, "valid.txtar") {
		if err := s.Validate(typed(t, f.Data)); err != nil {
			t.Errorf("%s is valid; the schema says %v", f.Name, err)
		}
	}
	left := maps.Clone(beyondWeeks)
	for _, f := range weeksArchive(t, "invalid.txtar") {
		name, ok := strings.CutSuffix(f.Name, ".yaml")
		if !ok {
			continue
		}
		err := s.Validate(typed(t, f.Data))
		if _, excused := beyondWeeks[name]; (err == nil) != excused {
			t.Errorf("%s is not valid; the schema says %v, excused: %v", f.Name, err, excused)
		}
		delete(left, name)
	}
	for name := range left {
		t.Errorf("there is no %s.yaml to excuse", name)
	}
	for _, b := range weeks.Builtins() {
		if err := s.Validate(typed(t, b.Source)); err != nil {
			t.Errorf("%s: %v", b.Name, err)
		}
		if line, _, _ := strings.Cut(string(b.Source), "\n"); line != "# yaml-language-server: $schema="+schema.WeeksFileName {
			t.Errorf("%s begins with %q", b.Name, line)
		}
	}
}

// TestEveryKeyOfWeeksIsExplained holds that each key says what it means.
func TestEveryKeyOfWeeksIsExplained(t *testing.T) {
	var s struct {
		Properties map[string]struct{ Description string }
		Defs       map[string]struct {
			Properties map[string]struct{ Description string }
		} `json:"$defs"`
	}
	if err := json.Unmarshal(schema.WeeksJSON(), &s); err != nil {
		t.Fatal(err)
	}
	for _, of := range []map[string]struct{ Description string }{s.Properties, s.Defs["Grow"].Properties, s.Defs["Lighter"].Properties} {
		if len(of) == 0 {
			t.Error("a mapping has no keys")
		}
		for name, p := range of {
			if p.Description == "" {
				t.Errorf("%s has no description", name)
			}
		}
	}
}

func compileWeeks(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema.WeeksJSON()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schema.WeeksFileName, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(schema.WeeksFileName)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// typed reads YAML as an editor does, by version 1.2: a date is a text.
func typed(t *testing.T, src []byte) any {
	t.Helper()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil || len(doc.Content) == 0 {
		return nil
	}
	return value(t, doc.Content[0])
}

func value(t *testing.T, n *yaml.Node) any {
	t.Helper()
	switch n.Kind {
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			m[n.Content[i].Value] = value(t, n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		list := []any{}
		for _, c := range n.Content {
			list = append(list, value(t, c))
		}
		return list
	case yaml.AliasNode:
		return value(t, n.Alias)
	}
	if n.Tag == "!!timestamp" {
		return n.Value
	}
	var v any
	if err := n.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

func weeksArchive(t *testing.T, name string) []txtar.File {
	t.Helper()
	a, err := txtar.ParseFile(filepath.Join("..", "weeks", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	return a.Files
}

package schema_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"maps"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"coldfloor/sessions"
	"coldfloor/sessions/schema"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

// beyond are the files of invalid.txtar that the parser refuses and no schema
// can, each with the reason.
var beyond = map[string]string{
	"merge-key":         "who reads YAML 1.1 has merged it",
	"doubled-keys":      "a mapping that was read has each key once",
	"second-document":   "a schema sees one document",
	"rest-on-the-last":  "an item does not know whether it is the last",
	"tempo-against-rep": "two values cannot be compared",
	"tempo-long":        "a text that holds numbers cannot be compared",
	"rest-too-large":    "a text that holds a number cannot be compared",
	"travel-long":       "a text that holds a number cannot be compared",
	"too-long":          "sums are beyond a schema",
	"too-many-steps":    "sums are beyond a schema",
	"both-bounds":       "sums are beyond a schema",
	"variant-too-long":  "products are beyond a schema",
	"calls-too-few":     "a text that holds a number cannot be compared",
	"call-every-short":  "a text that holds a number cannot be compared",
	"call-every-long":   "a text that holds a number cannot be compared",
	"call-every-turned": "a text that holds numbers cannot be compared",
	"spelt-numbers":     "a number that was read has no spelling",
}

func TestSchemaAndParserAgree(t *testing.T) {
	s := compile(t)
	for _, f := range archive(t, "valid.txtar") {
		if err := validate(t, s, f.Data); err != nil {
			t.Errorf("%s is valid; the schema says %v", f.Name, err)
		}
	}
	left := maps.Clone(beyond)
	for _, f := range archive(t, "invalid.txtar") {
		name, ok := strings.CutSuffix(f.Name, ".yaml")
		if !ok {
			continue
		}
		err := validate(t, s, f.Data)
		if _, excused := beyond[name]; (err == nil) != excused {
			t.Errorf("%s is not valid; the schema says %v, excused: %v", f.Name, err, excused)
		}
		delete(left, name)
	}
	for name := range left {
		t.Errorf("there is no %s.yaml to excuse", name)
	}
	for _, b := range sessions.Builtins() {
		if err := validate(t, s, b.Source); err != nil {
			t.Errorf("%s: %v", b.Name, err)
		}
		if line, _, _ := strings.Cut(string(b.Source), "\n"); line != "# yaml-language-server: $schema="+schema.FileName {
			t.Errorf("%s begins with %q", b.Name, line)
		}
	}
}

// TestSchemaAndParserAgreeOnValues tries every value at every key.
func TestSchemaAndParserAgreeOnValues(t *testing.T) {
	s := compile(t)
	values := strings.Split(strings.TrimSuffix(string(archive(t, "values.txtar")[0].Data), "\n"), "\n")
	base := map[string]string{
		"session":  "coldfloor: 1\ntitle: T\nblocks: [{title: B, exercises: [{name: E, reps: 1}]}]\nKEY",
		"block":    "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises: [{name: E, reps: 1}]\n  KEY",
		"exercise": "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - name: E\n    reps: 1\n    KEY",
		"sided":    "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - name: E\n    reps_per_side: 1\n    KEY",
		"first":    "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - {name: E, reps: 1, KEY}\n  - {name: F, reps: 1}",
		"measured": "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - {name: E, reps: 1, measure: height, KEY}",
		"variant":  "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - {name: E, reps: 1, easier: {name: V, KEY}}",
		"timed":    "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - {name: E, time: 1h, KEY}",
		"work":     "coldfloor: 1\ntitle: T\nblocks:\n- title: B\n  exercises:\n  - name: E\n    KEY",
	}
	tried := map[string]string{
		"session": "for level note lead_in", "block": "part note trains rounds rest rest_after change", "work": "reps reps_per_side time time_per_side",
		"exercise": "rep tempo contacts cues how finish easier harder load floor travel overhead measure way tries calls call_every", "measured": "way tries", "timed": "calls", "variant": "contacts rep tempo cues how",
		"sided": "sides switch", "first": "rest",
	}
	for place, names := range tried {
		for key := range strings.FieldsSeq(names) {
			for _, v := range values {
				src := strings.Replace(base[place], "KEY", key+": "+v, 1)
				_, parsed := sessions.Parse("x", []byte(src))
				if schemed := validate(t, s, []byte(src)); (parsed == nil) != (schemed == nil) {
					t.Errorf("%s: %s\nthe parser says %v\nthe schema says %v", key, v, parsed, schemed)
				}
			}
		}
	}
}

func TestEveryKeyIsExplained(t *testing.T) {
	out := schema.JSON()
	var s struct {
		Schema     string         `json:"$schema"`
		Properties map[string]any `json:"properties"`
		Defs       map[string]struct {
			Properties map[string]any
		} `json:"$defs"`
	}
	if err := json.Unmarshal(out, &s); err != nil {
		t.Fatal(err)
	}
	if s.Schema != "https://json-schema.org/draft/2020-12/schema" {
		t.Errorf("$schema is %q", s.Schema)
	}
	for _, properties := range []map[string]any{s.Properties, s.Defs["Block"].Properties, s.Defs["Exercise"].Properties, s.Defs["Variant"].Properties} {
		if len(properties) == 0 {
			t.Error("a mapping has no keys")
		}
		for name, p := range properties {
			if p.(map[string]any)["description"] == nil {
				t.Errorf("%s has no description", name)
			}
		}
	}
}

// compile compiles the schema, which first is held against the meta-schema.
func compile(t *testing.T) *jsonschema.Schema {
	t.Helper()
	out := schema.JSON()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(out))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(schema.FileName, doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(schema.FileName)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// validate does what an editor does: it reads YAML, and holds the values
// against the schema. What is not YAML is not valid.
func validate(t *testing.T, s *jsonschema.Schema, src []byte) error {
	t.Helper()
	src = bytes.Replace(src, []byte("%YAML 1.2"), []byte("#"), 1) // yaml.v3 knows 1.1 only
	d := yaml.NewDecoder(bytes.NewReader(src))
	var v any
	if err := d.Decode(&v); err != nil {
		if strings.Contains(err.Error(), "already defined") {
			return nil // yaml.v3 knows doubled keys, a schema does not
		}
		return err
	}
	if err := d.Decode(new(any)); !errors.Is(err, io.EOF) && err != nil {
		return err
	}
	return s.Validate(v)
}

func archive(t *testing.T, name string) []txtar.File {
	t.Helper()
	a, err := txtar.ParseFile(filepath.Join("..", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Files) == 0 || !slices.ContainsFunc(a.Files, func(f txtar.File) bool { return len(f.Data) > 0 }) {
		t.Fatalf("%s holds no files", name)
	}
	return a.Files
}

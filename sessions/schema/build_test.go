package schema

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"reflect"
	"strconv"
	"testing"
	"time"
	"unicode/utf16"

	"coldfloor/internal/units"
	"coldfloor/sessions"

	"github.com/invopop/jsonschema"
)

var update = flag.Bool("update", false, "write the schema anew")

// TestEmbedded holds the embedded file against the Go types.
func TestEmbedded(t *testing.T) {
	text, err := json.MarshalIndent(build(), "", "  ")
	if err != nil {
		t.Fatal(err)
	}
	text = append(asASCII(text), '\n')
	if *update {
		if err := os.WriteFile(FileName, text, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	if !bytes.Equal(text, JSON()) {
		t.Errorf("%s is not what the types say; run go test ./sessions/schema -update", FileName)
	}
}

// asASCII writes every other character of JSON as an escape.
func asASCII(text []byte) []byte {
	var b bytes.Buffer
	for _, r := range string(text) {
		if r < 0x7f {
			b.WriteRune(r)
			continue
		}
		for _, u := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&b, "\\u%04x", u)
		}
	}
	return b.Bytes()
}

// TestStrict holds the schema to what a validator in strict mode asks: each
// keyword stands beside the type that it is for, and no keyword is unknown.
func TestStrict(t *testing.T) {
	var doc any
	if err := json.Unmarshal(JSON(), &doc); err != nil {
		t.Fatal(err)
	}
	strict(t, "#", doc.(map[string]any))
	for _, c := range JSON() {
		if c >= 0x7f {
			t.Fatal("the schema is not all ASCII")
		}
	}
}

// kinds are the types that keywords are for; those for any type have none.
var kinds = map[string]string{
	"properties": "object", "required": "object", "additionalProperties": "object", "dependentRequired": "object", "dependentSchemas": "object",
	"items": "array", "minItems": "array", "maxItems": "array", "uniqueItems": "array",
	"pattern": "string", "maxLength": "string", "minLength": "string",
	"minimum": "number", "maximum": "number", "exclusiveMinimum": "number",
	"$schema": "", "$defs": "", "$ref": "", "title": "", "description": "", "default": "", "examples": "", "enum": "", "const": "",
	"type": "", "anyOf": "", "oneOf": "", "not": "", "if": "", "then": "",
}

func strict(t *testing.T, at string, s map[string]any) {
	for keyword, v := range s {
		kind, known := kinds[keyword]
		have, _ := s["type"].(string)
		if have == "integer" {
			have = "number"
		}
		if !known || kind != "" && kind != have {
			t.Errorf("%s: %s beside type %q", at, keyword, have)
		}
		below := map[string]any{}
		switch keyword {
		case "properties", "$defs", "dependentSchemas":
			below = v.(map[string]any)
		case "items", "not", "if", "then":
			below[keyword] = v
		case "anyOf", "oneOf":
			for i, v := range v.([]any) {
				below[fmt.Sprint(keyword, i)] = v
			}
		}
		for name, v := range below {
			if sub, ok := v.(map[string]any); ok {
				strict(t, at+"/"+name, sub)
			}
		}
	}
}

// build makes the schema from the types and completes each of their mappings.
func build() *jsonschema.Schema {
	r := &jsonschema.Reflector{Anonymous: true, ExpandedStruct: true, FieldNameTag: "yaml", Mapper: mapped}
	s := r.Reflect(&sessions.Session{})
	s.Title = "Training session"
	s.Description = "A speed or power session, as coldfloor reads it."
	complete(s, "session")
	block, exercise := s.Definitions["Block"], s.Definitions["Exercise"]
	complete(block, "block")
	complete(exercise, "exercise")
	complete(s.Definitions["Variant"], "variant")
	restBetweenRounds(block)
	oneKindOfWork(exercise)
	for name, d := range definitions() {
		s.Definitions[name] = d
	}
	return s
}

// mapped names the definition of a type that is written as one value.
func mapped(t reflect.Type) *jsonschema.Schema {
	switch t {
	case reflect.TypeFor[time.Duration]():
		return ref("Duration")
	case reflect.TypeFor[units.Length]():
		return ref("Length")
	case reflect.TypeFor[sessions.Tempo](), reflect.TypeFor[sessions.Floor](), reflect.TypeFor[sessions.Overhead](), reflect.TypeFor[sessions.Interval]():
		return ref(t.Name())
	}
	return nil
}

func ref(name string) *jsonschema.Schema { return &jsonschema.Schema{Ref: "#/$defs/" + name} }

// complete gives each property of a mapping what the keys table says of it.
func complete(s *jsonschema.Schema, mapping string) {
	for name, p := range s.Properties.FromOldest() {
		k := keys[mapping+"."+name]
		p.Description = k.about
		p.Default = k.def
		p.Enum = k.words
		if k.least != nil && p.Type != "array" {
			p.Minimum = json.Number(strconv.Itoa(*k.least))
		}
		if k.most > 0 && p.Type == "integer" {
			p.Maximum = json.Number(strconv.Itoa(k.most))
		}
		if k.most > 0 && p.Type == "array" {
			p.MinItems, p.MaxItems = count(1), count(k.most)
			if k.least != nil {
				p.MinItems, p.UniqueItems = count(*k.least), true
			}
		}
		if k.alone {
			list := *p
			list.Items, list.Description = ref(k.ref), ""
			*p = jsonschema.Schema{Description: k.about, AnyOf: []*jsonschema.Schema{&list, ref("OneLabel")}}
			continue
		}
		if k.variant {
			p.Ref, p.AnyOf = "", []*jsonschema.Schema{ref("Text"), ref("Variant")}
		}
		if k.only != 0 {
			p.Type, p.Const = "", k.only
		}
		if k.ref != "" && p.Type == "array" {
			p.Items = ref(k.ref)
		} else if k.ref != "" {
			p.Type, p.Ref = "", "#/$defs/"+k.ref
		}
	}
}

func count(n int) *uint64 { u := uint64(n); return &u }

// restBetweenRounds makes rest required if there is more than one round.
func restBetweenRounds(block *jsonschema.Schema) {
	more := jsonschema.NewProperties()
	more.Set("rounds", &jsonschema.Schema{Type: "integer", ExclusiveMinimum: "1"})
	block.If = &jsonschema.Schema{Type: "object", Properties: more, Required: []string{"rounds"}}
	block.Then = needs("rest")
}

// needs is a mapping that has the key.
func needs(key string) *jsonschema.Schema {
	return &jsonschema.Schema{Type: "object", Required: []string{key}}
}

// oneKindOfWork makes exactly one of the work keys required, and keeps what
// orders the sides to work that has sides, calls to timed work, and what tells
// more of a key to where that key is.
func oneKindOfWork(exercise *jsonschema.Schema) {
	for _, k := range []string{"reps", "reps_per_side", "time", "time_per_side"} {
		exercise.OneOf = append(exercise.OneOf, needs(k))
	}
	exercise.DependentRequired = map[string][]string{"way": {"measure"}, "tries": {"measure"}, "call_every": {"calls"}}
	timed := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{exercise.OneOf[2], exercise.OneOf[3]}}
	sided := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{exercise.OneOf[1], exercise.OneOf[3]}}
	exercise.DependentSchemas = map[string]*jsonschema.Schema{"sides": sided, "switch": sided, "calls": timed}
}

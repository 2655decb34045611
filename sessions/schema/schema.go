// Package schema writes the session format as JSON Schema, draft 2020-12, so
// that an editor completes and checks a session while it is typed.
//
// The shape comes from the Go types of package sessions. What a value may look
// like, and what a key means, stands here beside it. A few things that
// sessions.Parse refuses cannot be said in a schema: how long the plan is, a
// rest on a round's last exercise, a rep that disagrees with its tempo, a
// set too short for its calls, and how a number is spelt.
package schema

import (
	"encoding/json"
	"reflect"
	"strconv"
	"time"

	"coldfloor/internal/units"
	"coldfloor/sessions"

	"github.com/invopop/jsonschema"
)

// FileName is what the built-in sessions call the schema: a file in their own
// folder.
const FileName = "session.schema.json"

// JSON returns the schema, indented, with a line break at its end.
func JSON() ([]byte, error) {
	out, err := json.MarshalIndent(build(), "", "  ")
	if err != nil {
		return nil, err
	}
	return append(out, '\n'), nil
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
		if k.least != nil {
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

// restBetweenRounds makes rest required where there is more than one round.
func restBetweenRounds(block *jsonschema.Schema) {
	more := jsonschema.NewProperties()
	more.Set("rounds", &jsonschema.Schema{ExclusiveMinimum: "1"})
	block.If = &jsonschema.Schema{Properties: more, Required: []string{"rounds"}}
	block.Then = &jsonschema.Schema{Required: []string{"rest"}}
}

// oneKindOfWork makes exactly one of the work keys required, and keeps what
// orders the sides to work that has sides, calls to timed work, and what tells
// more of a key to where that key is.
func oneKindOfWork(exercise *jsonschema.Schema) {
	for _, k := range []string{"reps", "reps_per_side", "time", "time_per_side"} {
		exercise.OneOf = append(exercise.OneOf, &jsonschema.Schema{Required: []string{k}})
	}
	exercise.DependentRequired = map[string][]string{"way": {"measure"}, "tries": {"measure"}, "call_every": {"calls"}}
	timed := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{exercise.OneOf[2], exercise.OneOf[3]}}
	sided := &jsonschema.Schema{AnyOf: []*jsonschema.Schema{exercise.OneOf[1], exercise.OneOf[3]}}
	exercise.DependentSchemas = map[string]*jsonschema.Schema{"sides": sided, "switch": sided, "calls": timed}
}

package schema

import (
	"strings"

	"coldfloor/sessions"

	"github.com/invopop/jsonschema"
)

// The notations of units.ParseDuration, units.ParseLength and the like as
// regular expressions of ECMA-262, which Go reads alike. A number has no more
// digits after its point than its unit can hold exactly.
const (
	numberOfNanos  = `[0-9]+(\.[0-9]{1,9}0*)?` // of seconds and of what is counted in seconds
	numberOfMillis = `[0-9]+(\.[0-9]{1,6}0*)?` // of milliseconds

	hours, minutes, seconds, millis = numberOfNanos + ` *h`, numberOfNanos + ` *m(ins?)?`, numberOfNanos + ` *s(ecs?)?`, numberOfMillis + ` *ms`

	duration = `^ *(` + numberOfNanos +
		`|` + hours + `( *` + minutes + `)?( *` + seconds + `)?( *` + millis + `)?` +
		`|` + minutes + `( *` + seconds + `)?( *` + millis + `)?` +
		`|` + seconds + `( *` + millis + `)?` +
		`|` + millis +
		`|[0-9]+(:[0-5][0-9]){1,2}(\.[0-9]{1,9}0*)?) *$`
	noDuration = `^[0:.hmsinec ]*$`

	metres, centimetres, millimetres = `[0-9]+(\.[0-9]{1,3}0*)?`, `[0-9]+(\.[0-9]0*)?`, `[0-9]+(\.0+)?`

	length   = `(` + metres + ` *m|` + centimetres + ` *cm|` + millimetres + ` *mm)`
	noLength = `[0.cm ]*`

	phase   = `[0-9]+(\.[0-9]{1,9}0*)?`
	tempo   = `^` + phase + `-` + phase + `-(` + phase + `|[xX])(-` + phase + `)?$`
	noTempo = `^[0.-]*$`
)

// unreadable matches the characters that no text may hold: control characters,
// line separators, byte order marks and those that turn the direction of text.
const unreadable = "[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069\ufeff]"

// definitions are the values that keys share.
func definitions() jsonschema.Definitions {
	above := pattern(length, "^"+noLength+"$")
	above.Pattern = "^ *" + length + " *$"
	return jsonschema.Definitions{
		"Label":            text(sessions.MaxLabel),
		"OneLabel":         alone(sessions.MaxLabel),
		"Text":             text(sessions.MaxText),
		"Duration":         durations(&jsonschema.Schema{Type: "number", Minimum: "0"}, pattern(duration, "")),
		"PositiveDuration": durations(&jsonschema.Schema{Type: "number", ExclusiveMinimum: "0"}, pattern(duration, noDuration)),
		"Length":           above,
		"Tempo":            examples(pattern(tempo, noTempo), "3-1-1", "2-0-1-1", "3-1-X"),
		"Call":             text(sessions.MaxCall),
		"Interval":         examples(durations(&jsonschema.Schema{Type: "number", Minimum: "1"}, pattern(interval(), "")), "3s", "2s-4s"),
		"Floor":            examples(pattern(size(), "^"+noLength+"[x×]|[x×]"+noLength+"$"), "2m x 1m"),
		"Overhead": examples(&jsonschema.Schema{AnyOf: []*jsonschema.Schema{
			{Enum: []any{sessions.OverheadNone, sessions.OverheadReach, sessions.OverheadJump}}, above}}, "none", "jump", "30cm"),
	}
}

// interval is a duration, or two with - between them.
func interval() string {
	one := strings.TrimSuffix(strings.TrimPrefix(duration, "^"), "$")
	return "^" + one + "(-" + one + ")?$"
}

// alone is the only item of a list, without its brackets.
func alone(most int) *jsonschema.Schema {
	s := text(most)
	s.Not.Pattern = "," + "|" + unreadable
	return s
}

// text is a text of one to most characters that is not blank.
func text(most int) *jsonschema.Schema {
	s := pattern(`[^ \t\r\n]`, unreadable)
	s.MaxLength = count(most)
	return s
}

// pattern is a text that matches one expression and not the other.
func pattern(yes, no string) *jsonschema.Schema {
	s := &jsonschema.Schema{Type: "string", Pattern: yes}
	if no != "" {
		s.Not = &jsonschema.Schema{Type: "string", Pattern: no}
	}
	return s
}

// durations is a bare number of seconds or a text.
func durations(number, text *jsonschema.Schema) *jsonschema.Schema {
	return examples(&jsonschema.Schema{AnyOf: []*jsonschema.Schema{text, number}}, "90s", "1min30s", "1:30", "700ms")
}

func examples(s *jsonschema.Schema, of ...any) *jsonschema.Schema {
	s.Examples = of
	return s
}

// size is two lengths with an x between; the first has the unit of the second
// if it has none of its own.
func size() string {
	forms := []string{length + ` *[x×] *` + length}
	for _, u := range [][2]string{{metres, "m"}, {centimetres, "cm"}, {millimetres, "mm"}} {
		forms = append(forms, u[0]+` *[x×] *`+u[0]+` *`+u[1])
	}
	return `^ *(` + strings.Join(forms, "|") + `) *$`
}

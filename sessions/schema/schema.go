// Package schema holds the session format as JSON Schema, draft 2020-12, so
// that an editor completes and checks a session while it is typed.
//
// The file is made ahead by the package's tests, from the Go types of package
// sessions and from what stands beside them there. A few things that
// sessions.Parse refuses cannot be said in a schema: how long the plan is, a
// rest on a round's last exercise, a rep that disagrees with its tempo, a
// set too short for its calls, and how a number is spelt.
package schema

import _ "embed"

// FileName is what the built-in sessions call the schema: a file in their own
// folder.
const FileName = "session.schema.json"

//go:embed session.schema.json
var embedded string

// JSON returns the schema, indented, with a line break at its end. It is all
// ASCII: what turns the direction of text stands in it as escapes.
func JSON() []byte { return []byte(embedded) }

// WeeksFileName is what the built-in plans of weeks call their schema.
const WeeksFileName = "weeks.schema.json"

//go:embed weeks.schema.json
var embeddedWeeks string

// WeeksJSON returns the schema of a plan of weeks, all ASCII. It stands as a
// file of its own and is held against the reader by the package's tests. Beyond
// it are sums and whatever depends on the sessions that a plan names.
func WeeksJSON() []byte { return []byte(embeddedWeeks) }

package sessions

import (
	"embed"
	"fmt"
)

// Builtin is a session that comes with the program.
type Builtin struct {
	Name   string // what a user calls it: the file's name without its ending
	Source []byte // the YAML as it is printed to start one's own from
}

// Session reads the built-in session.
func (b Builtin) Session() (*Session, error) { return Parse(b.Name, b.Source) }

//go:embed builtin/*.yaml
var builtinFiles embed.FS

// builtinNames are the built-in sessions in the order in which a player meets
// them: from the first one to the hardest, and the short one at the end.
var builtinNames = []string{"first-hops", "hallway-power", "quick-feet", "deep-court", "deep-rallies", "shadow-corners", "test-day", "ten-minutes"}

// Builtins returns the built-in sessions, from the first a beginner should do
// to the hardest, and then the shortest.
func Builtins() []Builtin {
	list := make([]Builtin, len(builtinNames))
	for i, name := range builtinNames {
		list[i] = builtin(name)
	}
	return list
}

// FindBuiltin returns the built-in session of that name.
func FindBuiltin(name string) (b Builtin, ok bool) {
	for _, n := range builtinNames {
		if n == name {
			return builtin(n), true
		}
	}
	return Builtin{}, false
}

// builtin returns the session of one of the builtinNames.
func builtin(name string) Builtin {
	src, err := builtinFiles.ReadFile("builtin/" + name + ".yaml")
	if err != nil {
		panic(fmt.Sprintf("sessions: the built-in session %s is not embedded: %v", name, err))
	}
	return Builtin{Name: name, Source: src}
}

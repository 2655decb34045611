package weeks

import (
	"embed"
	"fmt"
	"slices"
)

// Builtin is a plan that comes with the program. It names built-in sessions
// alone.
type Builtin struct {
	Name   string
	Source []byte
}

// Plan reads the built-in plan.
func (b Builtin) Plan() (*Plan, error) { return Parse(b.Name, b.Source, From(".")) }

//go:embed builtin/*.yaml
var builtinFiles embed.FS

var builtinNames = []string{"off-season-six-weeks"}

// Builtins returns the built-in plans.
func Builtins() []Builtin {
	var list []Builtin
	for _, name := range builtinNames {
		b, _ := FindBuiltin(name)
		list = append(list, b)
	}
	return list
}

// FindBuiltin returns the built-in plan of that name.
func FindBuiltin(name string) (b Builtin, ok bool) {
	if !slices.Contains(builtinNames, name) {
		return Builtin{}, false
	}
	src, err := builtinFiles.ReadFile("builtin/" + name + ".yaml")
	if err != nil {
		panic(fmt.Sprintf("weeks: the built-in plan %s is not embedded: %v", name, err))
	}
	return Builtin{name, src}, true
}

package sessions

import (
	"errors"
	"io/fs"
	"path/filepath"
	"strings"

	"coldfloor/internal/fault"
	"coldfloor/internal/nearest"
	"coldfloor/internal/safetext"
	"coldfloor/internal/yamlread"
)

// Open reads the session that the user calls nameOrPath: a built-in one by its
// name, or else a file. The error is a yamlread.Problems if the file was
// read and is wrong; any other has a hint on a second line if one helps.
func Open(nameOrPath string) (*Session, error) {
	if b, ok := FindBuiltin(nameOrPath); ok {
		return b.Session()
	}
	src, err := yamlread.ReadFile(nameOrPath)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, notFound(nameOrPath)
	}
	if err != nil {
		return nil, err
	}
	return Parse(nameOrPath, src)
}

// notFound says that there is no such session, and what might have been meant.
func notFound(name string) error {
	hint := "coldfloor sessions lists those that come with the program; a file is named by its path"
	if near := nearest.Word(name, builtinNames); near != "" {
		hint = "did you mean " + near + "?"
	}
	if isPath(name) {
		return fault.New(hint, "there is no file %s", safetext.Quote(name))
	}
	return fault.New(hint, "there is no session called %s", safetext.Quote(name))
}

// isPath reports whether name looks like a path and not like the name of a
// built-in session.
func isPath(name string) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".yaml", ".yml", ".json":
		return true
	}
	return strings.ContainsAny(name, `/\`)
}

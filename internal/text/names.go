package text

import (
	"embed"
	"io/fs"
	"strings"
	"sync"
)

// germanNames holds, a file a session, a line that the built-in sessions say
// and below it, after "= ", what is shown in its place.
//
//go:embed de/*.txt
var germanNames embed.FS

// german reads the names at the first text that is shown in German.
var german = sync.OnceValue(func() map[string]string { return readNames(germanNames) })

// readNames reads all files of names. Empty lines, and those that begin with #,
// say nothing.
func readNames(files fs.FS) map[string]string {
	names := map[string]string{}
	paths, err := fs.Glob(files, "*/*.txt")
	if err != nil {
		panic(err) // the pattern is wrong
	}
	for _, path := range paths {
		content, err := fs.ReadFile(files, path)
		if err != nil {
			panic(err) // the file is embedded
		}
		line := ""
		for l := range strings.Lines(string(content)) {
			l = strings.TrimSpace(l)
			own, isOwn := strings.CutPrefix(l, "= ")
			switch {
			case isOwn:
				names[line] = own
			case l != "" && l[0] != '#':
				line = l
			}
		}
	}
	return names
}

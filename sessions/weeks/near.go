package weeks

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"coldfloor/internal/nearest"
	"coldfloor/internal/yamlread"
)

// Near returns the name of the session or plan that somebody who typed name
// most likely meant: a built-in one, or a file of the folder that name is in.
// It is "" if none is near.
func Near(name string) string {
	there := files(filepath.Dir(name), func(has func(key string) bool) bool {
		return has("blocks") || has("days")
	})
	return near(name, append(sessionNames(), builtinNames...), there)
}

// nearSession returns the session that is most likely meant by a name in a plan
// whose file is in the folder, or "".
func nearSession(name, folder string) string {
	path := name
	if !filepath.IsAbs(name) {
		path = filepath.Join(folder, name)
	}
	there := files(filepath.Dir(path), func(has func(key string) bool) bool { return has("blocks") })
	return near(name, sessionNames(), there)
}

// near returns the one of the built-in names and of the files that is nearest
// to name, or ""; files lie where name is looked for. Endings do not count, but
// of two that are alike the one of name's own kind is meant.
func near(name string, builtin, files []string) string {
	folder, base := filepath.Split(name)
	for i := range files {
		files[i] = folder + files[i]
	}
	all := slices.Concat(builtin, files)
	if isFile(name) {
		all = slices.Concat(files, builtin)
	}
	stems := make([]string, len(all))
	for i, n := range all {
		stems[i] = stem(filepath.Base(n))
	}
	best := nearest.Word(stem(base), stems)
	if best == "" {
		return ""
	}
	return all[slices.Index(stems, best)]
}

// stem returns a file's name without the ending of one that a coach writes.
func stem(file string) string {
	return strings.TrimSuffix(strings.TrimSuffix(file, ".yaml"), ".yml")
}

// files returns the names of the files in a folder whose keys tell that they
// are meant; none if it cannot be read. Settings, players and whatever else a
// coach keeps there are no sessions.
func files(folder string, meant func(has func(key string) bool) bool) []string {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return nil
	}
	var names []string
	for _, e := range entries {
		name := e.Name()
		if stem(name) == name || e.IsDir() {
			continue
		}
		if src, err := yamlread.ReadFile(filepath.Join(folder, name)); err == nil && meant(rootKeys(src)) {
			names = append(names, name)
		}
	}
	return names
}

// didYouMean returns the hint that names what was probably meant, or another if
// that is not known.
func didYouMean(near, otherwise string) string {
	if near == "" {
		return otherwise
	}
	return "did you mean " + near + "?"
}

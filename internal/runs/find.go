package runs

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"coldfloor/internal/fault"
)

// find returns the journals at paths, each once, in the order given and within
// a folder in that of their names.
func find(paths []string) ([]string, error) {
	var files []string
	seen := map[string]bool{}
	add := func(path string) {
		key := path
		if abs, err := filepath.Abs(path); err == nil {
			key = abs
		}
		if !seen[key] {
			seen[key] = true
			files = append(files, path)
		}
	}
	for _, path := range paths {
		info, err := os.Stat(path)
		if err != nil {
			return nil, unreadable(path, err)
		}
		if !info.IsDir() {
			add(path)
			continue
		}
		inner, err := journals(path)
		if err != nil {
			return nil, err
		}
		for _, f := range inner {
			add(f)
		}
	}
	return files, nil
}

// journals returns the .jsonl files in a folder and its inner folders, those
// whose name begins with a dot left out.
func journals(dir string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return unreadable(path, err)
		case path != dir && strings.HasPrefix(d.Name(), "."):
			if d.IsDir() {
				return fs.SkipDir
			}
		case !d.IsDir() && strings.EqualFold(filepath.Ext(path), ".jsonl"):
			files = append(files, path)
		}
		return nil
	})
	if err == nil && len(files) == 0 {
		err = fault.New("put the players' journals in it, or name the files", "no journal in %s: it holds no .jsonl file", dir)
	}
	return files, err
}

func unreadable(path string, err error) error {
	var inner *fs.PathError
	if errors.As(err, &inner) {
		err = inner.Err
	}
	if errors.Is(err, fs.ErrNotExist) {
		return fault.New("name a journal, or a folder of them", "there is no journal %s", path)
	}
	return fmt.Errorf("cannot read %s: %w", path, err)
}

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

// finder collects the journals at some paths, each once.
type finder struct {
	files []File
	seen  map[string]bool
}

// find returns the journals at paths, each once, in the order given and within
// a folder in that of their names. What cannot be read inside a folder, and
// what is no file at all, is among them with its Err.
func find(paths []string) ([]File, error) {
	f := finder{seen: map[string]bool{}}
	for _, path := range paths {
		info, err := os.Stat(path)
		if err != nil {
			return nil, unreadable(path, err)
		}
		if !info.IsDir() {
			f.add(path, info)
			continue
		}
		n, err := f.folder(path)
		if err != nil {
			return nil, err
		}
		if n == 0 {
			return nil, fault.New("put the players' journals in it, or name the files", "no journal in %q: it holds no .jsonl file", path)
		}
	}
	return f.files, nil
}

// add takes a path that is no folder. Only a file is read: a pipe or a device
// may never end.
func (f *finder) add(path string, info fs.FileInfo) {
	var err error
	if !info.Mode().IsRegular() {
		err = fmt.Errorf("it is %s, and only a file can be a journal", kind(info.Mode()))
	}
	f.take(File{Path: path, Err: err})
}

// take keeps a file, unless it is known.
func (f *finder) take(file File) {
	key := file.Path
	if abs, err := filepath.Abs(key); err == nil {
		key = abs
	}
	if !f.seen[key] {
		f.seen[key] = true
		f.files = append(f.files, file)
	}
}

// folder adds the .jsonl files in a folder and its inner folders, those whose
// name begins with a dot left out, and returns how many there are, with what
// cannot be read. The error is that of the folder itself.
func (f *finder) folder(dir string) (n int, err error) {
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil && path == dir:
			return unreadable(path, err)
		case err != nil:
			n++
			f.take(File{Path: path, Err: reason(err)})
		case path != dir && strings.HasPrefix(d.Name(), "."):
			if d.IsDir() {
				return fs.SkipDir
			}
		case !d.IsDir() && strings.EqualFold(filepath.Ext(path), ".jsonl"):
			n++
			f.named(path)
		}
		return nil
	})
	return n, err
}

// named adds a file of a folder, or what its link leads to.
func (f *finder) named(path string) {
	info, err := os.Stat(path)
	if err != nil {
		f.take(File{Path: path, Err: reason(err)})
		return
	}
	if !info.IsDir() {
		f.add(path, info)
	}
}

// kind says what a path that is no file leads to.
func kind(m fs.FileMode) string {
	switch {
	case m&fs.ModeNamedPipe != 0:
		return "a pipe"
	case m&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// reason returns an error of the system without the path in it.
func reason(err error) error {
	var inner *fs.PathError
	if errors.As(err, &inner) {
		return inner.Err
	}
	return err
}

func unreadable(path string, err error) error {
	if errors.Is(err, fs.ErrNotExist) {
		return fault.New("name a journal, or a folder of them", "there is no journal %q", path)
	}
	return fmt.Errorf("cannot read %q: %w", path, reason(err))
}

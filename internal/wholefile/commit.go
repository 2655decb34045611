package wholefile

import (
	"errors"
	"io/fs"
	"os"
)

// Commit puts every file in its place, or, if one cannot be put there, leaves
// all places as they were.
func (b *Batch) Commit() error {
	defer b.Discard()
	for _, f := range b.files {
		if err := f.settle(); err != nil {
			return err
		}
	}
	for _, f := range b.files { // before any is replaced, for not all can be undone where one is held
		if err := replaceable(f.place); err != nil {
			return f.keep(err)
		}
	}
	var done []replaced
	for _, f := range b.files {
		r, err := f.replace(len(b.files) > 1)
		if err != nil {
			for _, r := range done {
				r.undo()
			}
			return err
		}
		done = append(done, r)
	}
	for _, r := range done {
		if r.kept != "" {
			os.Remove(r.kept)
		}
	}
	return nil
}

// replaced is a place that a new file has come to stand in.
type replaced struct {
	place string
	kept  string // the name under which the file that stood there is kept; empty for none
}

// replace puts the file in its place. With keep the one that stands there is
// kept under a passing name, so that it can be undone.
func (f *File) replace(keep bool) (replaced, error) {
	r := replaced{place: f.place}
	if keep {
		kept := passing(f.place)
		switch err := second(f.place, kept); {
		case err == nil:
			r.kept = kept
		case !errors.Is(err, fs.ErrNotExist):
			return r, f.keep(err)
		}
	}
	if err := os.Rename(f.temp, f.place); err != nil {
		if r.kept != "" {
			r.undo()
		}
		return r, f.keep(err)
	}
	f.temp = ""
	return r, nil
}

// undo puts back what stood in the place.
func (r replaced) undo() {
	if r.kept == "" {
		os.Remove(r.place)
		return
	}
	if err := os.Rename(r.kept, r.place); err != nil {
		return // the old file stays under its passing name rather than nowhere
	}
	os.Remove(r.kept) // two names of one file: the renaming did nothing
}

// second gives the file at place the name kept too, or, if the file system
// knows no second names, moves it there.
func second(place, kept string) error {
	err := os.Link(place, kept)
	if err == nil || errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if info, statErr := os.Lstat(place); statErr != nil || !info.Mode().IsRegular() {
		return err
	}
	return os.Rename(place, kept)
}

package track

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"time"

	"coldfloor/internal/plan"
	"coldfloor/sound"
)

// ErrThere is the refusal to replace a file.
var ErrThere = errors.New("is there already")

// Files says where a track goes.
type Files struct {
	Track string // its ending names the format
	Cues  string // for the list of its cues as CSV; empty: none is written
	Force bool   // replace files that are there
}

// Write writes a track and the list of its cues. They come to stand in their
// places once both are whole; where that fails, or ctx is done, nothing is left
// behind.
func (t Files) Write(ctx context.Context, p *plan.Plan, o sound.Options, progress func(written, all time.Duration)) error {
	format, ok := FormatOf(t.Track)
	if !ok {
		return fmt.Errorf("%q does not end in .flac or .wav", t.Track)
	}
	track, err := t.create(t.Track)
	if err != nil {
		return err
	}
	defer track.discard()
	if err := Write(ctx, track.file, format, p, o, progress); err != nil {
		return track.failed(err)
	}
	if t.Cues == "" {
		return track.commit()
	}
	cues, err := t.create(t.Cues)
	if err != nil {
		return err
	}
	defer cues.discard()
	if err := WriteCueList(cues.file, p, o); err != nil {
		return cues.failed(err)
	}
	return errors.Join(track.commit(), cues.commit())
}

// draft is a file under a passing name beside its place.
type draft struct {
	path string
	file *os.File
}

// create opens a draft of the file at path, with the mode any new file has.
func (t Files) create(path string) (*draft, error) {
	switch info, err := os.Stat(path); {
	case err == nil && info.IsDir():
		return nil, fmt.Errorf("%q is a folder", path)
	case err == nil && !t.Force:
		return nil, fmt.Errorf("%q %w", path, ErrThere)
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return nil, err
	}
	name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".coldfloor-%016x.tmp", rand.Uint64()))
	f, err := os.OpenFile(name, os.O_CREATE|os.O_EXCL|os.O_RDWR, 0o666)
	if err != nil {
		return nil, (&draft{path: path}).failed(err)
	}
	return &draft{path, f}, nil
}

// failed names the file that could not be written by its place.
func (d *draft) failed(err error) error {
	var e *fs.PathError
	if errors.As(err, &e) {
		err = e.Err
	}
	return fmt.Errorf("%q cannot be written: %w", d.path, err)
}

// commit puts the file in its place.
func (d *draft) commit() error {
	if err := errors.Join(d.file.Sync(), d.file.Close()); err != nil {
		return d.failed(err)
	}
	if err := os.Rename(d.file.Name(), d.path); err != nil {
		return d.failed(err)
	}
	return nil
}

// discard removes a file that was not committed.
func (d *draft) discard() {
	d.file.Close()
	os.Remove(d.file.Name())
}

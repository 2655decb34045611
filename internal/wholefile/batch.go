package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
)

// Batch is some files on their way: all of them come to stand in their places,
// or none does. The zero Batch is empty.
type Batch struct{ files []*File }

// File is a file on its way to its place. It is written to under no name, or,
// if the system cannot do that, under a passing one beside its place.
type File struct {
	named string // as the user named it
	place string // with links resolved
	f     *os.File
	temp  string // its passing name; empty while it has none
	mode  fs.FileMode
	err   error // the first failure to write
}

// Create begins a file that is to stand at path, if Check has nothing against
// it.
func (b *Batch) Create(path string, o Options) (*File, error) {
	if err := Check(path, o); err != nil {
		return nil, err
	}
	place, err := filepath.Abs(path)
	if err != nil {
		return nil, failed(path, err)
	}
	if real, err := filepath.EvalSymlinks(place); err == nil {
		place = real
	}
	for _, other := range b.files {
		if other.place == place {
			return nil, fault.New("give each a name of its own", "two files would be written to %s", safetext.Quote(path))
		}
	}
	f := &File{named: path, place: place, mode: o.Mode}
	if f.f = nameless(filepath.Dir(place), o.Mode); f.f == nil {
		f.temp = passing(place)
		if f.f, err = os.OpenFile(f.temp, os.O_CREATE|os.O_EXCL|os.O_RDWR, o.Mode); err != nil {
			return nil, failed(path, err)
		}
	}
	b.files = append(b.files, f)
	return f, nil
}

// passing returns a name for a passing file beside the one at place.
func passing(place string) string {
	return filepath.Join(filepath.Dir(place), fmt.Sprintf(".coldfloor-%016x.tmp", rand.Uint64()))
}

// Write implements io.Writer. Its error names the file as the user did.
func (f *File) Write(p []byte) (int, error) {
	n, err := f.f.Write(p)
	return n, f.keep(err)
}

// Seek implements io.Seeker.
func (f *File) Seek(offset int64, whence int) (int64, error) {
	n, err := f.f.Seek(offset, whence)
	return n, f.keep(err)
}

// keep returns err as one about the file, and remembers the first.
func (f *File) keep(err error) error {
	if err != nil && f.err == nil {
		f.err = failed(f.named, err)
	}
	return f.err
}

// Failed returns why the file could not be written, if it could not, and else
// err. A library that writes to the file dresses such an error up in words of
// its own.
func (f *File) Failed(err error) error {
	if err != nil && f.err != nil {
		return f.err
	}
	return err
}

// Discard gives up what was not committed. It may follow Commit.
func (b *Batch) Discard() {
	for _, f := range b.files {
		f.f.Close()
		if f.temp != "" {
			os.Remove(f.temp)
		}
	}
	b.files = nil
}

// settle makes sure that all of the file is on the disk and that it has a name
// beside its place.
func (f *File) settle() error {
	if f.err != nil {
		return f.err
	}
	if err := f.f.Sync(); err != nil && !errors.Is(err, errors.ErrUnsupported) {
		return f.keep(err)
	}
	if f.temp == "" {
		name := passing(f.place)
		if err := christen(f.f, name); err != nil {
			return f.keep(err)
		}
		f.temp = name
	}
	return f.keep(f.f.Close())
}

package journal

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"coldfloor/internal/fault"
	"coldfloor/internal/wholefile"

	"github.com/adrg/xdg"
	"github.com/gofrs/flock"
)

// DefaultPath returns where the journal is kept unless the user says
// otherwise: coldfloor/journal.jsonl in the data folder of the XDG Base
// Directory specification, or the system's equivalent.
func DefaultPath() string { return filepath.Join(xdg.DataHome, "coldfloor", "journal.jsonl") }

// lockPatience bounds the wait for another process that is appending. A line
// takes it milliseconds, so that one which waits longer has been stopped.
const lockPatience = 5 * time.Second

// Journal is a journal file that may be appended to, by several processes at
// once. It holds nothing open between two appends.
type Journal struct {
	path string
	seen seen
}

// Open returns the journal at path, having made sure that it can be written:
// a missing folder (mode 0700) and file (mode 0600, as it may hold reports of pain)
// are made. The error says what to do.
func Open(path string) (*Journal, error) {
	j, err := At(path)
	if err != nil {
		return nil, err
	}
	if err := os.MkdirAll(filepath.Dir(j.path), 0o700); err != nil {
		return nil, unwritable(path, err)
	}
	unlock, err := j.lock()
	if err != nil {
		return nil, unwritable(path, err)
	}
	defer unlock()
	f, err := j.open()
	if err != nil {
		return nil, unwritable(path, err)
	}
	defer f.Close()
	if err := looksLikeJournal(f); err != nil {
		return nil, fault.With("name another file with --journal FILE", &Unwritable{path, err})
	}
	syncFolder(filepath.Dir(j.path))
	return j, nil
}

// At returns the journal at path as it stands, to be read or added to; Open
// makes sure beforehand that it can be. Links are resolved, so that all who
// append to one file take the same lock.
func At(path string) (*Journal, error) {
	if path == "" {
		return nil, fault.New("name one with --journal FILE", "no journal file is named")
	}
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	abs = resolved(abs)
	if info, err := os.Stat(abs); err == nil && !info.Mode().IsRegular() {
		return nil, fault.With("name another with --journal FILE", &Unwritable{path, ErrNotRegular})
	}
	return &Journal{path: abs}, nil
}

// unwritable says that no journal can be kept at path, and what to do.
func unwritable(path string, err error) error {
	var inner *fs.PathError
	if errors.As(err, &inner) && inner.Path == path {
		err = inner.Err
	}
	hint := "make its folder writable, or name another file with --journal FILE"
	if wholefile.IsFull(err) {
		hint = "free some room, or name a file on another disk with --journal FILE"
	}
	return fault.With(hint, &Unwritable{path, err})
}

// Unwritable says that no journal can be kept in a file.
type Unwritable struct {
	File string
	Err  error // why
}

// Error implements error.
func (u *Unwritable) Error() string {
	if errors.Is(u.Err, ErrNotRegular) { // nor can it be read
		return u.File + " is not a journal: " + u.Err.Error()
	}
	return "cannot write the journal " + u.File + ": " + u.Err.Error()
}

// Unwrap returns why.
func (u *Unwritable) Unwrap() error { return u.Err }

// Why no journal can be kept in a file, besides what the system says.
var (
	ErrLocked     = errors.New("another process holds its lock")
	ErrNotRegular = errors.New("it is a folder or a device, not a file")
	ErrNotJournal = errors.New("it is not a journal; nothing was written to it")
)

// Path returns the journal's absolute path.
func (j *Journal) Path() string { return j.path }

func (j *Journal) open() (*os.File, error) {
	return os.OpenFile(j.path, os.O_RDWR|os.O_APPEND|os.O_CREATE, 0o600)
}

// lock takes the lock under which lines are appended. It is on a file of its
// own, for a lock on the journal itself would keep readers out on Windows.
func (j *Journal) lock() (unlock func(), err error) {
	l := flock.New(j.lockName()+".lock", flock.SetPermissions(0o600))
	ctx, cancel := context.WithTimeout(context.Background(), lockPatience)
	defer cancel()
	_, err = l.TryLockContext(ctx, 5*time.Millisecond)
	if errors.Is(err, context.DeadlineExceeded) {
		err = ErrLocked
	}
	return func() { l.Close() }, err
}

// Append writes lines, each with one write, and syncs them to the disk. A line
// that fails is taken back if that can be done, and none after it is
// written: Append may be called with the same lines again, for one that stands
// twice counts once. The caller fills in Run and N.
//
// A line that the reader would refuse is refused here, and then none is written.
func (j *Journal) Append(lines ...Line) error { return j.append(lines, false) }

// AppendWhole is Append for lines that say nothing without each other: they are
// written with one write, and taken back together.
func (j *Journal) AppendWhole(lines ...Line) error { return j.append(lines, true) }

// append appends lines, with one write each or with one for all of them.
func (j *Journal) append(lines []Line, whole bool) error {
	for i := range lines {
		if _, err := lines[i].check(); err != nil {
			return fmt.Errorf("line %d of run %s cannot be logged: it %w", lines[i].N, lines[i].Run, err)
		}
	}
	unlock, err := j.lock()
	if err != nil {
		return unwritable(j.path, err)
	}
	defer unlock()
	f, err := j.open()
	if err != nil {
		return unwritable(j.path, err)
	}
	before, err := f.Stat()
	if err == nil {
		err = appendTo(f, lines, whole)
	}
	if after, statErr := f.Stat(); err == nil && statErr == nil {
		appended(j.path, before, after)
	}
	if err = errors.Join(err, f.Close()); err != nil {
		return unwritable(j.path, err)
	}
	return nil
}

// file is what appendTo needs of an *os.File.
type file interface {
	io.Writer
	io.ReaderAt
	Stat() (fs.FileInfo, error)
	Truncate(size int64) error
	Sync() error
}

// appendTo appends lines to f, with one write for all of them if whole. A line that an earlier process left torn keeps
// what it has, on a line of its own.
func appendTo(f file, lines []Line, whole bool) error {
	info, err := f.Stat()
	if err != nil {
		return err
	}
	size := info.Size()
	var buf bytes.Buffer
	if size > 0 {
		last := make([]byte, 1)
		if _, err := f.ReadAt(last, size-1); err != nil {
			return err
		}
		if last[0] != '\n' {
			buf.WriteByte('\n')
		}
	}
	for i := range lines {
		text, err := Encode(&lines[i])
		if err != nil {
			return err
		}
		if buf.Write(text); whole && i < len(lines)-1 {
			continue
		}
		n, err := f.Write(buf.Bytes())
		if err != nil {
			return errors.Join(err, f.Truncate(size))
		}
		size += int64(n)
		buf.Reset()
	}
	return f.Sync()
}

// looksLikeJournal guards a file that is something else from being appended to
// by a slip of the hand. A journal with damaged lines passes.
func looksLikeJournal(r io.Reader) error {
	sc := bufio.NewReader(io.LimitReader(r, 1<<20))
	for empty := true; ; empty = false {
		line, err := sc.ReadBytes('\n')
		if bytes.HasPrefix(bytes.TrimSpace(line), []byte("{")) || empty && len(line) == 0 {
			return nil
		}
		if err != nil {
			return ErrNotJournal
		}
	}
}

// syncFolder makes sure that a new file's name survives a power loss. Not all
// systems can, and none needs it for what follows.
func syncFolder(dir string) {
	if d, err := os.Open(dir); err == nil {
		_ = d.Sync()
		d.Close()
	}
}

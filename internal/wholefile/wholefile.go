// Package wholefile writes files whole or not at all: several of them together
// if need be, never over a file that the command reads, and over one that the
// command did not make only by force. Its errors name the file as the user
// did, in one sentence.
package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"coldfloor/internal/fault"
	"coldfloor/internal/safetext"
)

// ErrThere is the refusal to replace a file that is there.
var ErrThere = errors.New("is there already")

// ErrInput is the refusal to write over a file that the command reads. Force
// does not lift it.
var ErrInput = errors.New("is read by this command, and is not written over")

// Options say how a file is written and what it may replace.
type Options struct {
	Mode   fs.FileMode // of the new file, before the umask: 0o644, or 0o600 for what is about a person
	Force  bool        // replace a file that is there, whatever it holds
	Inputs []string    // the files that the command reads; those that are none are passed over
	Ours   *Kind       // files of this kind are replaced without force; nil: none is
	Firm   bool        // the command has no --force to offer
}

// Write writes content to the file at path, on a condition that Check states.
func Write(path string, content []byte, o Options) error {
	var b Batch
	defer b.Discard()
	f, err := b.Create(path, o)
	if err != nil {
		return err
	}
	if _, err := f.Write(content); err != nil {
		return err
	}
	return b.Commit()
}

// Check returns nil if a file may be written at path: there is none, or an
// ordinary one that is no input and is of the options' own kind or to be
// replaced by force. The error wraps ErrThere or ErrInput if that is the
// reason.
func Check(path string, o Options) error {
	if err := named(path); err != nil {
		return err
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Stat(filepath.Dir(path)); err != nil { // said before anything is asked or made
			return failed(path, err)
		}
		return nil
	case err != nil:
		return failed(path, err)
	}
	for _, in := range o.Inputs {
		if other, err := os.Stat(in); err == nil && os.SameFile(info, other) {
			return fault.New("name another file to write", "%s %w", safetext.Quote(path), ErrInput)
		}
	}
	switch {
	case info.IsDir():
		return fault.New("name a file in it", "%s is a folder", safetext.Quote(path))
	case !info.Mode().IsRegular():
		return fault.New("name another", "%s is not a file that can be replaced", safetext.Quote(path))
	case o.Force || o.Ours != nil && o.Ours.holds(path, info.Size()):
		return nil
	}
	hint, kind := "name another file, or add --force to replace it", ""
	if o.Firm {
		hint = "name another file, or move this one away"
	}
	if o.Ours != nil {
		kind = " and is not " + o.Ours.Name
	}
	return fault.New(hint, "%s %w%s", safetext.Quote(path), ErrThere, kind)
}

// Folder makes the folder at path unless it is there, with those above it.
func Folder(path string, mode fs.FileMode) error {
	if err := named(path); err != nil {
		return err
	}
	err := os.MkdirAll(path, mode)
	if err == nil {
		return nil
	}
	if info, at := os.Stat(path); at == nil && !info.IsDir() {
		return fault.New("name another folder", "%s is a file, not a folder", safetext.Quote(path))
	}
	hint := "name a folder that you can write in"
	if IsFull(err) {
		hint = "free some room, or name a folder on another disk"
	}
	return fault.New(hint, "cannot make the folder %s: %w", safetext.Quote(path), bare(err))
}

// named refuses the name - where it stands for no stream, so that nobody finds a
// file of that name later.
func named(path string) error {
	if path == "-" {
		return fault.New("name a file or a folder", "cannot write to \"-\" here")
	}
	return nil
}

// failed says in one sentence why the file at path cannot be written.
func failed(path string, err error) error {
	var done *fault.Error
	if errors.As(err, &done) {
		return err
	}
	if errors.Is(err, fs.ErrNotExist) {
		return fault.New("make it first, or name another", "there is no folder %s to write into", safetext.Quote(filepath.Dir(path)))
	}
	hint := "name another file"
	switch {
	case IsFull(err):
		hint = "free some room, or name a folder on another disk"
	case isHeld(err):
		hint = "close it if another program has it open, or name a folder that you can write in"
	case errors.Is(err, fs.ErrPermission):
		hint = "name a folder that you can write in"
	}
	return fault.New(hint, "cannot write %s: %w", safetext.Quote(path), bare(err))
}

// bare returns the system's reason alone, without the passing name of the file
// or the call that failed.
func bare(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

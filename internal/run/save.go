package run

import (
	"errors"
	"os"
	"path/filepath"

	"coldfloor/internal/fault"
	"coldfloor/internal/journal"
)

// errNotLogged is returned for what is to be kept of a run without a log.
var errNotLogged = errors.New("the run is not logged")

// Save logs what the player said of the run, and returns once all of the run is
// on the disk, or with why it is not. What is not there is kept and tried again;
// Save may be called again, with other words. It does nothing without a log.
func (a *Active) Save(v journal.Rating) error {
	if a.recorder == nil {
		return nil
	}
	a.recorder.Rate(v)
	return a.recorder.queue.flush()
}

// Written returns nil if all of the run so far is on the disk, or why it is not.
func (a *Active) Written() error {
	if a.recorder == nil {
		return nil
	}
	return a.recorder.queue.flush()
}

// SaveElsewhere writes the lines of the run, and what the player said of it, to
// a journal of their own, in the first of the working folder, the home folder
// and the one for temporary files that can be written. It returns the file. Put
// beside the journal or added to its end it counts as if it were there.
func (a *Active) SaveElsewhere(v journal.Rating) (file string, err error) {
	if a.recorder == nil {
		return "", errNotLogged
	}
	a.recorder.Rate(v)
	name := "coldfloor-" + a.recorder.start.Format("2006-01-02-1504") + ".jsonl"
	var errs []error
	for _, folder := range otherFolders() {
		file := filepath.Join(folder, name)
		if err := a.recorder.copyTo(file); err != nil {
			errs = append(errs, err)
			continue
		}
		a.recorder.queue.giveUp()
		return file, nil
	}
	return "", fault.With("free some room, and try again", errors.Join(errs...))
}

// otherFolders returns where a run can be kept if not in the journal.
func otherFolders() []string {
	folders := []string{}
	if wd, err := os.Getwd(); err == nil {
		folders = append(folders, wd)
	}
	if home, err := os.UserHomeDir(); err == nil {
		folders = append(folders, home)
	}
	return append(folders, os.TempDir())
}

package journaltest

import (
	"errors"
	"io"
	"os"

	"coldfloor/internal/journal"
)

// Fold reads a journal into runs, the earliest first. The problems hold a
// *journal.Damage for each line that counts for nothing, and what was wrong with
// the lines of a run; err is what kept it from reading on.
func Fold(r io.Reader) (runs []*journal.Run, problems []error, err error) {
	var f journal.Fold
	for e, lineErr := range journal.Read(r) {
		var d *journal.Damage
		switch {
		case errors.As(lineErr, &d):
			problems = append(problems, d)
		case lineErr != nil:
			err = lineErr
		default:
			f.Add(e)
		}
	}
	runs, more := f.Runs()
	return runs, append(problems, more...), err
}

// Load is Fold of the journal at path. A journal that does not exist is empty.
func Load(path string) (runs []*journal.Run, problems []error, err error) {
	f, err := os.Open(path)
	if os.IsNotExist(err) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	return Fold(f)
}

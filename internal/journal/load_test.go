package journal

import (
	"io"
	"os"
)

// foldAll folds every line of r. The problems hold a *Damage for each line that
// counts for nothing; err is what kept it from reading on.
func foldAll(r io.Reader) (runs []*Run, problems []error, err error) {
	var f Fold
	for e, lineErr := range Read(r) {
		switch d, ok := lineErr.(*Damage); {
		case ok:
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

// loadFile folds the journal at path.
func loadFile(path string) (runs []*Run, problems []error, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	return foldAll(f)
}

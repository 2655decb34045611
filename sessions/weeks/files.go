package weeks

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"unicode"

	"coldfloor/internal/fault"
	"coldfloor/internal/wholefile"
)

// WriteFiles writes the sessions of days into a folder, which it makes if need
// be, and returns the names of the files that are there then. A file that is
// there with another content is not replaced.
func (p *Plan) WriteFiles(folder string, days []Planned) (files []string, err error) {
	if err := wholefile.Folder(folder, 0o777); err != nil {
		return nil, err
	}
	for _, d := range days {
		s, err := p.Written(d)
		if err != nil {
			return files, err
		}
		file := filepath.Join(folder, d.FileName()+".yaml")
		if there, err := os.ReadFile(file); err != nil || !bytes.Equal(there, s.Source) {
			err := wholefile.Write(file, s.Source, wholefile.Options{Mode: 0o666, Inputs: p.Files()})
			if errors.Is(err, wholefile.ErrThere) {
				err = fault.With("name another folder, or move that file away", err)
			}
			if err != nil {
				return files, err
			}
		}
		files = append(files, file)
	}
	return files, nil
}

// FileName returns a name for files about the session of the day, without an
// ending: its date, its place if it is not the first of the day, and the
// name of its session.
func (d Planned) FileName() string {
	place := ""
	if d.Place > 1 {
		place = fmt.Sprintf("-%d", d.Place)
	}
	return d.Date.String() + place + "-" + plainName(d.Slot.Session)
}

// plainName makes of a session's name one that every file system takes.
func plainName(session string) string {
	name := filepath.Base(filepath.ToSlash(session))
	name = strings.TrimSuffix(strings.TrimSuffix(name, ".yaml"), ".yml")
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("-_.", r) {
			return r
		}
		return '-'
	}, name)
}
